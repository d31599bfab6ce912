namespace GddWatch.Notices.Composing;

/// <summary>The way to stop the mails: a letter to the operator.</summary>
internal static class StopRequest
{
    /// <summary>A mailto link (RFC 6068) to the operator with the subject filled in; ASCII alone, so that it fits a header and an attribute.</summary>
    public static string Link(string operatorAddress, string region)
    {
        string address = OneLine.Of(operatorAddress);
        int at = address.LastIndexOf('@');
        string to = at < 0 ? Uri.EscapeDataString(address) : $"{Uri.EscapeDataString(address[..at])}@{Uri.EscapeDataString(address[(at + 1)..])}";
        return $"mailto:{to}?subject={Uri.EscapeDataString($"unsubscribe {OneLine.Of(region)}")}";
    }
}
