using System.IO.Compression;
using System.Text;
using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Bodies without end, and packed ones.</summary>
public sealed class ReplySizeTests
{
    [Fact]
    public async Task Garbage_without_end_is_broken_off()
    {
        const long Offered = 200_000_000;
        long sent = 0;
        await using WeatherHost host = new(async (_, stream, stop) =>
        {
            await stream.WriteAsync("HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nConnection: close\r\n\r\n"u8.ToArray(), stop);
            byte[] garbage = new byte[1_000_000];
            Array.Fill(garbage, (byte)'[');
            while (sent < Offered)
            {
                await stream.WriteAsync(garbage, stop);
                sent += garbage.Length;
            }

            return false;
        });
        await Misbehaving.IsRefusedBesideAGoodOneAsync(host, "larger than 16 MB");
        Assert.True(sent < Offered / 2, $"{sent:N0} bytes were taken.");
    }

    [Fact]
    public Task A_length_that_no_reply_has_is_not_even_read() =>
        Misbehaving.IsRefusedAsync(_ => Encoding.ASCII.GetBytes("HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: 99999999999\r\n\r\n{"), "larger than 16 MB");

    [Fact]
    public async Task A_small_packed_body_that_becomes_gigantic_is_broken_off()
    {
        byte[] packed = Packed(new byte[64_000_000]);
        Assert.True(packed.Length < 1_000_000);

        await Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(200, packed, "Content-Type: application/json", "Content-Encoding: gzip"), "larger than 16 MB");
    }

    [Fact]
    public async Task A_packed_body_is_unpacked_and_a_broken_one_told()
    {
        await using WeatherHost host = new(asked => WeatherHost.Whole(200, Packed(Encoding.UTF8.GetBytes(OpenMeteoText.For(asked))), "Content-Type: application/json", "Content-Encoding: gzip"));
        using ServiceDesk desk = new();

        Assert.Equal(3, (await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address))).Observed!.Count);
        Assert.Contains("gzip", Assert.Single(host.All).Headers["Accept-Encoding"], StringComparison.Ordinal);
        await Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(200, "not gzip at all, whatever it says", "Content-Type: application/json", "Content-Encoding: gzip"), "cannot be unpacked");
    }

    private static byte[] Packed(byte[] plain)
    {
        using MemoryStream packed = new();
        using (GZipStream gzip = new(packed, CompressionLevel.Fastest)) gzip.Write(plain);
        return packed.ToArray();
    }
}
