namespace GddWatch.Feeds.Services.Fetching;

/// <summary>A host leads into a private network. Caught where the request began.</summary>
internal sealed class PrivateAddressException(string host) : Exception($"{host} is not on the public internet.");

/// <summary>A reply is larger than any that is believed. Caught where the request began.</summary>
internal sealed class ReplyTooLargeException(int bytes) : Exception($"The reply has more than {bytes} bytes.");
