using System.Diagnostics;
using System.Text;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using Xunit;

namespace GddWatch.Tests.Mail;

/// <summary>The real process with a password in its environment, and a server that repeats what it hears.</summary>
public sealed class SecretsTests
{
    private const string User = "windows";
    private const string Password = "a-Quiet#Secret";

    [Fact]
    public async Task A_password_gets_neither_into_the_log_nor_into_status_nor_into_what_is_kept()
    {
        string coded = Convert.ToBase64String(Encoding.UTF8.GetBytes($"\0{User}\0{Password}"));
        string alone = Convert.ToBase64String(Encoding.UTF8.GetBytes(Password));
        await using var server = new ScriptedMailServer([
            ScriptedMailServer.Greeting, ("EHLO", "250-localhost\r\n250 AUTH PLAIN"), ("AUTH", $"535 5.7.8 {Password}, {coded} and {alone} are wrong")]);
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), new DateOnly(2024, 4, 1)));
        // Weather that stopped years ago is told to the operator, whatever the day of the test.
        await File.WriteAllTextAsync(
            Path.Combine(workshop.Config, "appsettings.json"),
            $$"""{ "Mail": { "Host": "127.0.0.1", "Port": "{{server.Port}}", "Security": "none", "User": "{{User}}", "From": "service@example.org" } }""",
            TestContext.Current.CancellationToken);

        string log = await WatchOnceAsync(workshop);
        Ran status = await workshop.RunAsync("status");

        // Whatever the console makes of the three dots.
        Assert.Matches(@"5\.7\.8 \S{1,3}, \S{1,3} and \S{1,3} are wrong", log);
        Assert.Contains("5.7.8 …, … and … are wrong", status.Output, StringComparison.Ordinal);
        string kept = string.Concat(Directory.EnumerateFiles(workshop.Data, "*", SearchOption.AllDirectories).Select(file => Encoding.Latin1.GetString(File.ReadAllBytes(file))));
        Assert.All((string[])[Password, coded, alone], secret => Assert.DoesNotContain(secret, log + status.Output + status.Error + kept, StringComparison.Ordinal));
        Assert.Contains(coded, string.Join('\n', server.Heard), StringComparison.Ordinal);
    }

    private static async Task<string> WatchOnceAsync(Workshop workshop)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "gddwatch.dll"), "watch", "--once", "--config", workshop.Config, "--data", workshop.Data])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["Mail__Password"] = Password;
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        string error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 1, error);
        return await output + error;
    }
}
