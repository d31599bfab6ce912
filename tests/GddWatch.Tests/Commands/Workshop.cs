using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GddWatch.Commands;
using GddWatch.Tests.Loopback;
using Microsoft.Extensions.Time.Testing;

namespace GddWatch.Tests.Commands;

/// <summary>A folder with a configuration and a data folder of its own, in which commands are run as a person would, at a stated time.</summary>
internal sealed class Workshop : IDisposable
{
    public Workshop()
    {
        Folder = Directory.CreateTempSubdirectory("gddwatch-").FullName;
        Directory.CreateDirectory(Config);
        foreach (string file in Directory.EnumerateFiles(Path.Combine(SharedFiles.RepositoryRoot, "config"), "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(Config, Path.GetRelativePath(Path.Combine(SharedFiles.RepositoryRoot, "config"), file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    public string Folder { get; }

    public string Config => Path.Combine(Folder, "config");

    public string Data => Path.Combine(Folder, "var");

    /// <summary>What the commands keep.</summary>
    public Keeping Keeping => new(Keeping.InFile(Data), new Terminal(TextWriter.Null, TextWriter.Null, Clock, isInteractive: false));

    public FakeTimeProvider Clock { get; private set; } = new(new DateTimeOffset(2026, 1, 15, 12, 0, 0, TimeSpan.Zero));

    /// <summary>The sample region with its sample weather.</summary>
    public static Workshop WithSamples()
    {
        var workshop = new Workshop();
        Directory.CreateDirectory(Path.Combine(workshop.Folder, "data-samples"));
        foreach (string file in Directory.EnumerateFiles(Path.Combine(SharedFiles.RepositoryRoot, "data-samples"), "*.csv"))
        {
            File.Copy(file, Path.Combine(workshop.Folder, "data-samples", Path.GetFileName(file)));
        }

        return workshop;
    }

    /// <summary>One lawn with a CSV file of its own, and one reader of its mails.</summary>
    public static Workshop WithOneLawn(string csv, double latitude = 41.6, string turf = "cool-season", string unit = "°C")
    {
        var workshop = new Workshop();
        workshop.WriteRegion(latitude, turf, unit);
        workshop.WriteWeather(csv);
        return workshop;
    }

    /// <summary>Puts the clock to an instant, earlier ones included.</summary>
    public void PutClockTo(DateTimeOffset instant) => Clock = new FakeTimeProvider(instant);

    /// <summary>Goes by another clock.</summary>
    public void GoBy(FakeTimeProvider clock) => Clock = clock;

    public void WriteWeather(string csv) => File.WriteAllText(Path.Combine(Folder, "lawn.csv"), csv);

    /// <summary>Lets mails go out through a server of this machine, encrypted, with its login and its certificate.</summary>
    public void SendThrough(LoopbackMailServer server, X509Certificate2 certificate)
    {
        File.WriteAllText(Path.Combine(Folder, "password"), LoopbackMailServer.Password);
        File.WriteAllText(Path.Combine(Config, "appsettings.json"), $$"""
            {
              "Mail": {
                "Host": "localhost", "Port": "{{server.Port}}", "Security": "starttls", "User": "{{LoopbackMailServer.User}}", "PasswordFile": "password",
                "From": "service@example.org", "PinnedCertificateSha256": "{{certificate.GetCertHashString(HashAlgorithmName.SHA256)}}"
              }
            }
            """);
    }

    public void WriteRegion(double latitude = 41.6, string turf = "cool-season", string unit = "°C", string recipients = "adviser@example.org") =>
        File.WriteAllText(Path.Combine(Config, "region.yaml"), $$"""
            region: { name: Test Region, time-zone: America/Chicago, units: us }
            sites:
              - id: lawn
                name: The Lawn
                latitude: {{latitude}}
                longitude: -93.3
                elevation: 250 m
                turf: [{{turf}}]
                history: [grubs]
                feeds:
                  - csv: lawn.csv
                    columns: { date: date, minimum: tmin, maximum: tmax, precipitation: rain }
                    units: { temperature: {{unit}}, precipitation: mm }
            recipients:
            {{string.Join('\n', recipients.Split(' ').Select(address => $"  - {{ address: {address}, sites: all, treatments: [spring-pre-emergent, grub-preventive, overseeding] }}"))}}
            operator: { address: operator@example.org }
            """);

    public async Task<Ran> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = await CommandLine.RunAsync(
            [.. arguments, "--config", Config, "--data", Data],
            new Terminal(output, error, Clock, isInteractive: false),
            Xunit.TestContext.Current.CancellationToken);
        return new Ran(code, output.ToString(), error.ToString());
    }

    /// <summary>Runs a command that waits for time to pass, such as between attempts to reach a server, and lets it pass at once.</summary>
    public async Task<Ran> RunLettingTimePassAsync(params string[] arguments)
    {
        Task<Ran> running = Task.Run(() => RunAsync(arguments), Xunit.TestContext.Current.CancellationToken);
        while (!running.IsCompleted)
        {
            // Made time runs a hundred times as fast as real time and not faster, so that a busy machine does not turn seconds into days.
            Clock.Advance(TimeSpan.FromMilliseconds(100));
            await Task.WhenAny(running, Task.Delay(1, Xunit.TestContext.Current.CancellationToken));
        }

        return await running;
    }

    /// <summary>The mails in a folder by name, with their bytes.</summary>
    public static SortedDictionary<string, byte[]> MailsIn(string folder)
    {
        var mails = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        if (!Directory.Exists(folder)) return mails;
        foreach (string file in Directory.EnumerateFiles(folder)) mails.Add(Path.GetFileName(file), File.ReadAllBytes(file));
        return mails;
    }

    public SortedDictionary<string, byte[]> ReplayMails => MailsIn(Path.Combine(Data, "replay", "mail"));

    public SortedDictionary<string, byte[]> Mails => MailsIn(Path.Combine(Data, "mail"));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

/// <summary>What a command answered.</summary>
internal sealed record Ran(int Code, string Output, string Error);
