using GddWatch.Configuration.Settings;
using GddWatch.Notices.Channels;
using Microsoft.Extensions.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class SettingsReaderTests : IDisposable
{
    private static readonly string Pin = string.Join(':', Enumerable.Repeat("AB", 32));

    private readonly DirectoryInfo home = Directory.CreateTempSubdirectory("gddwatch-settings-");

    [Fact]
    public void The_sample_settings_write_into_a_folder_at_six()
    {
        SettingsReading reading = SettingsReader.Read(Path.Combine(SharedFiles.RepositoryRoot, "config"));

        Assert.Empty(reading.Faults);
        Assert.Null(reading.Settings!.MailServer);
        Assert.Equal(new TimeOnly(6, 0), reading.Settings.DailyAt);
    }

    [Theory]
    [InlineData("0", null)]
    [InlineData("", null)]
    [InlineData("8080", 8080)]
    public void The_port_of_the_service_is_off_unless_it_is_given(string written, int? port) =>
        Assert.Equal(port, Read(("Health:Port", written)).Settings!.HealthPort);

    [Fact]
    public void A_port_that_is_none_is_refused_with_what_is_accepted() =>
        Assert.Equal("Health:Port: this is not a port. Found: \"80 80\". Accepted: a whole number from 1 to 65535, such as 8080; 0 for none.", Assert.Single(Read(("Health:Port", "80 80")).Faults));

    [Fact]
    public void A_server_is_what_was_written()
    {
        SettingsReading reading = Read(
            ("Mail:Host", "mail.example.org"), ("Mail:Port", "2525"), ("Mail:User", "watch"), ("Mail:Password", "hush"), ("Mail:From", "watch@example.org"), ("Mail:Timeout", "00:01:00"), ("Mail:PinnedCertificateSha256", Pin));

        Assert.Empty(reading.Faults);
        SmtpOptions server = reading.Settings!.MailServer!;
        Assert.Equal(("mail.example.org", 2525, SmtpSecurity.StartTls), (server.Host, server.Port, server.Security));
        Assert.Equal(("watch", "hush", "watch@example.org", TimeSpan.FromMinutes(1)), (server.User, server.Password, server.From, server.Timeout));
        Assert.Equal(Pin, server.PinnedCertificateSha256);
        Assert.Empty(server.Validate());
        Assert.DoesNotContain("hush", reading.Settings.ToString());
    }

    // The ports that IANA has given to these services: RFC 6409, RFC 8314, RFC 5321 (MEMORY).
    [Theory]
    [InlineData("mail.example.org", "starttls", 587)]
    [InlineData("mail.example.org", "tls", 465)]
    [InlineData("127.0.0.1", "none", 25)]
    public void The_usual_port_goes_with_the_kind_of_security(string host, string security, int port) =>
        Assert.Equal(port, Read(("Mail:Host", host), ("Mail:Security", security), ("Mail:From", "watch@example.org")).Settings!.MailServer!.Port);

    [Fact]
    public void All_faults_come_at_once_each_with_its_key_and_what_was_found()
    {
        IReadOnlyList<string> faults = Read(
            ("Mail:Host", "smtp://mail"), ("Mail:Port", "70000"), ("Mail:Security", "ssl"), ("Mail:From", "watch"), ("Mail:Timeout", "30"), ("Mail:User", "watch"), ("Mail:Sender", "x"), ("Mail:PinnedCertificateSha256", "12:34"), ("Schedule:At", "6 am")).Faults;

        (string Key, string Found)[] expected =
        [
            ("Mail:Sender", ""), ("Mail:Security", "\"ssl\""), ("Mail:Host", "\"smtp://mail\""), ("Mail:From", "\"watch\""), ("Mail:Password", ""), ("Mail:Port", "\"70000\""),
            ("Mail:Timeout", "\"30\""), ("Mail:PinnedCertificateSha256", "\"12:34\""), ("Schedule:At", "\"6 am\""),
        ];
        Assert.Equal(expected.Length, faults.Count);
        Assert.All(expected.Zip(faults), each =>
        {
            Assert.StartsWith($"{each.First.Key}: ", each.Second);
            Assert.Contains(each.First.Found, each.Second);
            Assert.Contains("Accepted: ", each.Second);
        });
    }

    [Fact]
    public void A_password_never_crosses_the_net_in_the_clear() =>
        Assert.Contains("in the clear", Assert.Single(Read(("Mail:Host", "mail.example.org"), ("Mail:Security", "none"), ("Mail:From", "watch@example.org")).Faults));

    [Fact]
    public void A_password_in_the_settings_file_is_refused_and_not_shown()
    {
        File.WriteAllText(Path.Combine(home.FullName, "appsettings.json"), """{ "Mail": { "Host": "mail.example.org", "User": "watch", "Password": "hush-hush", "From": "watch@example.org" } }""");

        string fault = Assert.Single(SettingsReader.Read(home.FullName).Faults);

        Assert.StartsWith("Mail:Password: a password stands in appsettings.json", fault);
        Assert.Contains("Mail__Password", fault);
        Assert.DoesNotContain("hush-hush", fault);
    }

    [Fact]
    public void A_password_comes_from_a_file_beside_the_configuration_folder_without_its_last_line_break()
    {
        File.WriteAllText(Path.Combine(home.FullName, "password.txt"), "hush hush\n");

        SmtpOptions server = Read(("Mail:Host", "mail.example.org"), ("Mail:User", "watch"), ("Mail:PasswordFile", "password.txt"), ("Mail:From", "watch@example.org")).Settings!.MailServer!;

        Assert.Equal("hush hush", server.Password);
    }

    [Fact]
    public void A_password_file_that_is_missing_is_one_fault() =>
        Assert.StartsWith(
            "Mail:PasswordFile: the file cannot be read.",
            Assert.Single(Read(("Mail:Host", "mail.example.org"), ("Mail:User", "watch"), ("Mail:PasswordFile", "nowhere.txt"), ("Mail:From", "watch@example.org")).Faults));

    [Theory]
    [InlineData("Mail:MostPerMinute", "-1", "a whole number such as 300, or 0 for no limit")]
    [InlineData("Mail:MostPerMinute", "many", "a whole number such as 300, or 0 for no limit")]
    [InlineData("Mail:GiveUpAfterDays", "0", "a whole number of days from 1 to 30")]
    [InlineData("Mail:GiveUpAfterDays", "31", "a whole number of days from 1 to 30")]
    [InlineData("Mail:AuthorityFile", "nowhere.pem", "a file with one certificate or more as PEM")]
    public void Limits_and_authorities_that_cannot_be_are_refused(string key, string value, string accepted)
    {
        string fault = Assert.Single(Read(("Mail:Host", "mail.example.org"), ("Mail:From", "watch@example.org"), (key, value)).Faults);

        Assert.StartsWith($"{key}: ", fault);
        Assert.Contains($"Found: \"{value}\". Accepted: ", fault);
        Assert.Contains(accepted, fault);
    }

    [Fact]
    public void A_login_inside_the_name_of_the_server_is_refused_and_not_shown()
    {
        string fault = Assert.Single(Read(("Mail:Host", "watch:hush@mail.example.org"), ("Mail:From", "watch@example.org")).Faults);

        Assert.StartsWith("Mail:Host: ", fault);
        Assert.DoesNotContain("hush", fault);
    }

    [Fact]
    public void A_settings_file_that_is_not_JSON_is_a_fault_with_its_line()
    {
        File.WriteAllText(Path.Combine(home.FullName, "appsettings.json"), "{\n  \"Mail\": {\n    \"Host\": oops\n  }\n}\n");

        Assert.Contains("appsettings.json, line 3: the file cannot be read as JSON", Assert.Single(SettingsReader.Read(home.FullName).Faults));
    }

    [Fact]
    public void Without_a_settings_file_the_defaults_hold()
    {
        SettingsReading reading = SettingsReader.Read(home.FullName);

        Assert.Empty(reading.Faults);
        Assert.Equal(new TimeOnly(6, 0), reading.Settings!.DailyAt);
    }

    [Theory]
    [InlineData("""{ "Mail": { "Host": null, "Port": 587, "Timeout": "00:00:10" }, "Schedule": { "At": "21:30" } }""", 21)]
    [InlineData("""{ "Mail": null }""", 6)]
    public void Numbers_and_nothing_in_JSON_are_taken_as_text(string json, int hour)
    {
        File.WriteAllText(Path.Combine(home.FullName, "appsettings.json"), json);

        SettingsReading reading = SettingsReader.Read(home.FullName);

        Assert.Empty(reading.Faults);
        Assert.Equal(hour, reading.Settings!.DailyAt.Hour);
    }

    public void Dispose() => home.Delete(recursive: true);

    private SettingsReading Read(params (string Key, string Value)[] settings) => SettingsReader.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(each => KeyValuePair.Create(each.Key, (string?)each.Value))).Build(), home.FullName);
}
