using MailKit;

namespace GddWatch.Notices.Channels;

/// <summary>Remembers whether any of a mail has gone over the line: from then on a broken line leaves its fate unknown.</summary>
internal sealed class HandOver : ITransferProgress
{
    private volatile bool hasBegun;

    /// <summary>Whether the mail itself has begun to go over.</summary>
    public bool HasBegun => hasBegun;

    /// <inheritdoc/>
    public void Report(long bytesTransferred, long totalSize) => hasBegun = true;

    /// <inheritdoc/>
    public void Report(long bytesTransferred) => hasBegun = true;
}
