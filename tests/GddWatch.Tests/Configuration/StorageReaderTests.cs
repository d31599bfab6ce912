using GddWatch.Configuration.Settings;
using Microsoft.Extensions.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class StorageReaderTests : IDisposable
{
    private readonly DirectoryInfo home = Directory.CreateTempSubdirectory("gddwatch-storage-settings-");

    public void Dispose() => home.Delete(recursive: true);

    [Fact]
    public void Without_a_word_about_it_things_are_kept_in_a_file()
    {
        StorageReading reading = Read();

        Assert.Empty(reading.Faults);
        Assert.Null(reading.Server);
    }

    [Fact]
    public void A_server_is_what_was_written_with_the_password_from_a_file_of_its_own()
    {
        File.WriteAllText(Path.Combine(home.FullName, "secret"), "hush hush\n");

        StorageReading reading = Read(("Storage:Kind", "PostgreSQL"), ("Storage:Connection", "Host=db.example.org;Database=lawns;Username=watch"), ("Storage:PasswordFile", "secret"));

        Assert.Empty(reading.Faults);
        Assert.Equal("lawns on db.example.org:5432", reading.Server!.ToString());
        Assert.Contains("hush hush", reading.Server.Connection, StringComparison.Ordinal);
        Assert.DoesNotContain("hush hush", reading.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Storage:Kind", "oracle", "Storage:Kind: this word is not known. Found: \"oracle\". Accepted: sqlite or postgresql.")]
    [InlineData("Storage:Sort", "sqlite", "Storage:Sort: this key is not known.")]
    [InlineData("Storage:Connection", "Host=db", "Storage:Connection: there is a server, but Storage:Kind says that things are kept in a file.")]
    public void What_is_wrong_is_told_with_its_key(string key, string value, string words) =>
        Assert.StartsWith(words, Assert.Single(Read((key, value)).Faults), StringComparison.Ordinal);

    [Theory]
    [InlineData("""{ "Storage": { "Kind": "postgresql", "Connection": "Host=localhost;Database=lawns;Username=watch;Password=hush-hush" } }""", "Storage:Connection")]
    [InlineData("""{ "Storage": { "Kind": "postgresql", "Connection": "Host=localhost;Database=lawns;Username=watch", "Password": "hush-hush" } }""", "Storage:Password")]
    public void A_password_in_the_settings_file_is_refused_and_not_shown(string json, string key)
    {
        File.WriteAllText(Path.Combine(home.FullName, "appsettings.json"), json);

        string fault = Assert.Single(StorageReader.Read(home.FullName).Faults);

        Assert.StartsWith($"{key}: a password stands in appsettings.json, where it does not belong", fault, StringComparison.Ordinal);
        Assert.Contains("Storage__Password", fault, StringComparison.Ordinal);
        Assert.DoesNotContain("hush-hush", fault, StringComparison.Ordinal);
    }

    private StorageReading Read(params (string Key, string Value)[] settings) => StorageReader.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(each => KeyValuePair.Create(each.Key, (string?)each.Value))).Build(), home.FullName);
}
