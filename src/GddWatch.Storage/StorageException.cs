namespace GddWatch.Storage;

/// <summary>What is kept could not be read or written. The message is for people: which file, what is wrong, what to do.</summary>
public sealed class StorageException : Exception
{
    /// <summary>Whether the same may succeed later without anybody doing something about it: a server that is starting again, a line that was cut.</summary>
    public bool MayPass { get; init; }

    /// <summary>Without words; for the platform's conventions only.</summary>
    public StorageException()
    {
    }

    /// <summary>With the sentence people read.</summary>
    public StorageException(string message)
        : base(message)
    {
    }

    /// <summary>With the sentence people read, and what caused it.</summary>
    public StorageException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
