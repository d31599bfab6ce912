using MimeKit;

namespace GddWatch.Notices.Channels;

/// <summary>
/// Writes each mail as one file named after its Message-ID. Whatever the moment at which the process is killed, a mail is there once and whole or not at all: it is
/// written beside under another name, flushed to the disk and only then given its name, which never replaces a file.
/// </summary>
public sealed class FolderChannel : IDeliveryChannel
{
    private const string UnfinishedPrefix = ".unfinished-";
    private const int MostAttempts = 5;

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    // Line ends as mail has them, on every system the same bytes.
    private static readonly FormatOptions AsSent = Format();

    private readonly string folder;
    private readonly SemaphoreSlim oneAtATime = new(1);
    private bool isReady;

    /// <summary>Makes the channel; the folder is made, for its owner alone, and tidied at the first mail.</summary>
    /// <param name="folder">The folder for the mails.</param>
    public FolderChannel(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        this.folder = folder;
    }

    /// <inheritdoc/>
    public string Name => $"the folder {folder}";

    /// <inheritdoc/>
    public TimeSpan LongestDelivery => TimeSpan.FromMinutes(1);

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> DeliverAsync(MimeMessage message, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (string.IsNullOrEmpty(message.MessageId)) return new DeliveryOutcome.RefusedForGood("The mail has no Message-ID to name its file after.");
        string file = Path.Combine(folder, $"{SafeFileName.For(message.MessageId)}.eml");
        await oneAtATime.WaitAsync(stop);
        try
        {
            MakeReady();
            return await WriteOnceAsync(message, file, stop);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new DeliveryOutcome.RefusedForNow(
                $"The mail could not be written into {Name}: {e.Message} Check that the folder can be written to and that the disk has room.")
            {
                ConcernsAll = true,
            };
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        oneAtATime.Dispose();
        return ValueTask.CompletedTask;
    }

    private async Task<DeliveryOutcome> WriteOnceAsync(MimeMessage message, string file, CancellationToken stop)
    {
        for (int attempt = 1; ; attempt++)
        {
            if (File.Exists(file)) return new DeliveryOutcome.Accepted(file);
            string unfinished = Path.Combine(folder, $"{UnfinishedPrefix}{Guid.NewGuid():N}");
            try
            {
                await WriteAsync(message, unfinished, stop);
                File.Move(unfinished, file, overwrite: false);
                return new DeliveryOutcome.Accepted(file);
            }
            catch (IOException) when (File.Exists(file))
            {
                // Another process was first with the same mail.
                return new DeliveryOutcome.Accepted(file);
            }
            catch (FileNotFoundException) when (attempt < MostAttempts)
            {
                // Another process that has just started took the unfinished file for a left-over.
            }
            finally
            {
                File.Delete(unfinished);
            }
        }
    }

    private static async Task WriteAsync(MimeMessage message, string path, CancellationToken stop)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        await using var stream = new FileStream(path, options);
        await message.WriteToAsync(AsSent, stream, stop);
        await stream.FlushAsync(stop);
        stream.Flush(flushToDisk: true);
    }

    private void MakeReady()
    {
        if (isReady && Directory.Exists(folder)) return;
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, OwnerOnly);
        }
        foreach (string leftOver in Directory.EnumerateFiles(folder, $"{UnfinishedPrefix}*")) File.Delete(leftOver);
        isReady = true;
    }

    private static FormatOptions Format()
    {
        FormatOptions options = FormatOptions.Default.Clone();
        options.NewLineFormat = NewLineFormat.Dos;
        return options;
    }
}
