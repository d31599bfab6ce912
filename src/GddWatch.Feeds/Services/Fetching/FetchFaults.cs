using System.Globalization;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>What is said about requests that gave no reply to look into.</summary>
internal static class FetchFaults
{
    private const string Connection = "a reply; look at this machine's connection, and whether the service works.";

    public static Fault Unreachable(string source, string why) => ReplyFaults.Refused(source, $"The service could not be reached: {why}", null, Connection);

    public static Fault Slow(string source, TimeSpan attempt) => ReplyFaults.Refused(
        source, $"The service did not answer in full within {attempt.TotalSeconds:0} s, several times over.", null, Connection);

    public static Fault Tls(string source) => ReplyFaults.Refused(
        source, "The service's certificate is not one that this machine trusts, so nothing was sent.", null,
        "a certificate for that host from a known authority; look at the clock of this machine, its list of authorities, and whether something stands in between.");

    public static Fault CutShort(string source) => ReplyFaults.Refused(source, "The reply broke off before its end, several times over.", null, "a whole reply.");

    public static Fault Unpackable(string source) => ReplyFaults.Refused(source, "The reply is packed and cannot be unpacked.", null, "a reply in gzip, deflate or brotli, or not packed.");

    public static Fault TooLarge(string source, int bytes) => ReplyFaults.Refused(
        source, $"The reply is larger than {bytes / 1024 / 1024} MB, which no reply of this service is. The reading was broken off.", null, "a reply of the size that its days need.");

    public static Fault NotAsked(string source, TimeSpan pause) => ReplyFaults.Refused(
        source, $"The service has failed again and again, so it is not asked for {pause.TotalMinutes:0} minutes.", null, "a service that answers.");

    public static Fault AsksToWait(string source, int status, TimeSpan? wait) => ReplyFaults.Refused(
        source,
        wait is { } time ? $"The service asks to be left alone for {Words(time)}. It is." : "The service says that it is asked too often, several times over.",
        $"HTTP {status}",
        "fewer requests: the limits of the service count for everybody behind the same address.");

    public static Fault Status(string source, int status, string start) => ReplyFaults.Refused(
        source,
        status >= 500 ? $"The service answered with an error of its own (HTTP {status}), several times over." : $"The service refused the request (HTTP {status}).",
        start.Length > 0 ? start : null,
        status >= 500 ? "a service that works." : "HTTP 200; where it stays so, look at the site's position, its station and the base-address.");

    public static Fault NotJsonType(string source, string type, string start) => ReplyFaults.Refused(
        source, $"The reply is not JSON but \"{type}\", such as a page of somebody in between.", start, "JSON, said so by its content type.");

    public static Fault Charset(string source, string charset) => ReplyFaults.Refused(
        source, "The reply is in another character set than JSON has.", charset, "UTF-8.");

    public static Fault Redirect(string source, string target, string why) => ReplyFaults.Refused(
        source, $"The service sends elsewhere, and there it is not followed: {why}", target, "a redirection to a public host by https, three at most; set base-address where the service has moved.");

    public static Fault NotSecure(string source) => ReplyFaults.Refused(
        source, "The address is not https, and the host is not this machine, so nothing was sent.", null, "an address that begins with https.");

    public static Fault Private(string source) => ReplyFaults.Refused(
        source, "The host leads into a private network, so nothing was sent.", null, "a host of the public internet, or this machine itself.");

    private static string Words(TimeSpan time) =>
        time.TotalMinutes >= 2 ? string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0} minutes") : string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0} seconds");
}
