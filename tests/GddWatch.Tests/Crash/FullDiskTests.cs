using System.Diagnostics;
using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>A data folder on a small disk that fills up: clear words, a failure, and nothing lost once there is room again.</summary>
public sealed class FullDiskTests
{
    private static readonly DateOnly Day = new(2025, 4, 25);
    private static readonly DateTimeOffset Noon = new(2025, 4, 25, 17, 0, 0, TimeSpan.Zero);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task However_much_room_is_left_it_says_that_the_disk_is_full_and_tells_everything_once_there_is_room()
    {
        using Workshop calm = Lawn();
        calm.PutClockTo(Noon);
        Assert.Equal(0, (await calm.RunAsync("watch", "--once")).Code);
        using Workshop tight = Lawn();
        await using SmallDisk disk = await SmallDisk.MountAsync(tight.Data);
        int full = 0;
        foreach (int kilobytes in (int[])[0, 4, 12, 40, 100, 180, 240, 300, 400, 600])
        {
            disk.Empty();
            disk.FillUpTo(kilobytes * 1024);
            tight.PutClockTo(Noon);
            Ran ran = await tight.RunAsync("watch", "--once");
            Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
            if (ran.Code != 0)
            {
                full++;
                Assert.Equal(1, ran.Code);
                Assert.Matches("is full|[Nn]o space|has room|Make room", ran.Error);
            }

            disk.MakeRoom();
            // What could not be written into the folder of mails is tried again after a while.
            tight.PutClockTo(Noon.AddHours(1));
            Ran next = await tight.RunAsync("watch", "--once");
            Assert.True(next.Code == 0, $"With {kilobytes} kB left before, it fails afterwards: {next.Error}");
            Assert.Equal(calm.Mails.Keys, tight.Mails.Keys);
            Assert.All(tight.Mails.Values, mail => Assert.NotEmpty(mail));
        }

        Assert.True(full >= 4, $"The disk was full {full} times only: the test tested nothing.");
    }

    private static Workshop Lawn()
    {
        Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Day));
        workshop.WriteRegion(recipients: "one@example.org two@example.org three@example.org");
        return workshop;
    }

    /// <summary>A disk in memory; its mounting needs rights that not every machine gives.</summary>
    private sealed class SmallDisk(string folder) : IAsyncDisposable
    {
        private string Filler => Path.Combine(folder, "filler");

        public static async Task<SmallDisk> MountAsync(string folder)
        {
            Directory.CreateDirectory(folder);
            bool isMounted = OperatingSystem.IsLinux() && await RunAsync("mount", "-t", "tmpfs", "-o", "size=4m,mode=0700", "tmpfs", folder);
            if (!isMounted) Assert.Skip("This test mounts a small disk in memory, which only root may do on Linux.");
            return new SmallDisk(folder);
        }

        public void Empty()
        {
            foreach (string entry in Directory.EnumerateFileSystemEntries(folder))
            {
                if (Directory.Exists(entry)) Directory.Delete(entry, recursive: true);
                else File.Delete(entry);
            }
        }

        /// <summary>Leaves so many bytes.</summary>
        public void FillUpTo(int room)
        {
            using var filler = new FileStream(Filler, FileMode.Create, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
            byte[] page = new byte[4096];
            try
            {
                while (true) filler.Write(page);
            }
            catch (IOException)
            {
                filler.SetLength(Math.Max(0, filler.Length / page.Length * page.Length - room));
            }
        }

        public void MakeRoom() => File.Delete(Filler);

        public async ValueTask DisposeAsync() => await RunAsync("umount", "-l", folder);

        private static async Task<bool> RunAsync(string command, params string[] arguments)
        {
            using Process process = Process.Start(new ProcessStartInfo(command, arguments) { UseShellExecute = false, RedirectStandardError = true })!;
            await process.WaitForExitAsync(Cancel);
            return process.ExitCode == 0;
        }
    }
}
