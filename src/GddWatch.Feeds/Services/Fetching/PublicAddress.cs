using System.Net;
using System.Net.Sockets;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>Tells addresses of the public internet from those of this machine and of private networks, and opens connections to the former alone.</summary>
public static class PublicAddress
{
    // Special-purpose ranges of IPv4 (RFC 6890 and its registry, MEMORY).
    private static readonly IPNetwork[] Special4 =
    [
        .. ((string[])["0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24", "192.168.0.0/16",
            "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/3"]).Select(IPNetwork.Parse),
    ];

    // Public addresses of IPv6 begin with 001; what tunnels IPv4 or is for examples is taken out (RFC 4291, RFC 6890, MEMORY).
    private static readonly IPNetwork Global6 = IPNetwork.Parse("2000::/3");
    private static readonly IPNetwork[] Special6 = [.. ((string[])["2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20"]).Select(IPNetwork.Parse)];

    /// <summary>Whether the address is one of the public internet.</summary>
    public static bool Is(IPAddress address)
    {
        ArgumentNullException.ThrowIfNull(address);
        IPAddress plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return plain.AddressFamily == AddressFamily.InterNetwork
            ? !Array.Exists(Special4, range => range.Contains(plain))
            : Global6.Contains(plain) && !Array.Exists(Special6, range => range.Contains(plain));
    }

    /// <summary>Opens a connection. A name must not lead into a private network; "localhost" and its numbers must lead to this machine.</summary>
    internal static async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken stop)
    {
        DnsEndPoint wanted = context.DnsEndPoint;
        bool isThisMachine = new UriBuilder("http", wanted.Host).Uri.IsLoopback;
        IPAddress[] addresses = await Dns.GetHostAddressesAsync(wanted.Host, stop);
        IPAddress[] allowed = [.. addresses.Where(address => isThisMachine ? IPAddress.IsLoopback(address) : Is(address))];
        if (allowed.Length == 0) throw new PrivateAddressException(wanted.Host);
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(allowed, wanted.Port, stop);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
