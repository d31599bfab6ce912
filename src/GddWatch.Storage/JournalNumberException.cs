namespace GddWatch.Storage;

/// <summary>The number that was given is that of no entry in force, so that there is nothing to mend or withdraw. The message is for people.</summary>
public sealed class JournalNumberException : Exception
{
    private const string Look = "Nothing was changed. `gddwatch record list` shows the numbers, with --all also of what was mended or withdrawn.";

    /// <summary>Without words; for the platform's conventions only.</summary>
    public JournalNumberException()
    {
    }

    /// <summary>With the sentence people read.</summary>
    public JournalNumberException(string message)
        : base(message)
    {
    }

    /// <summary>With the sentence people read, and what caused it.</summary>
    public JournalNumberException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal static JournalNumberException None(long number) => new($"There is no entry {number} in the journal. {Look}");

    internal static JournalNumberException NotInForce(KeptEntry kept) => new($"Entry {kept.Number} does not stand any more: it was {kept.Fate}. {Look}");
}
