using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Notices.Composing;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Notices.Channels;

public sealed class FolderChannelTests : IDisposable
{
    private readonly string parent = Directory.CreateTempSubdirectory("gddwatch-mail-").FullName;
    private readonly string folder;

    public FolderChannelTests() => folder = Path.Combine(parent, "mail");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(parent, recursive: true);

    [Fact]
    public async Task A_mail_becomes_one_file_named_after_its_message_id()
    {
        await using var channel = new FolderChannel(folder);
        MimeMessage mail = Mails.Make();

        DeliveryOutcome outcome = await channel.DeliverAsync(mail, Stop);

        string file = Path.Combine(folder, "one@example.org.eml");
        Assert.Equal(new DeliveryOutcome.Accepted(file), outcome);
        Assert.Equal([file], Directory.EnumerateFileSystemEntries(folder));
        Assert.Equal(Composers.BytesOf(mail), await File.ReadAllBytesAsync(file, Stop));
    }

    [Fact]
    public async Task The_folder_and_the_mails_are_for_the_owner_alone()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows has no Unix file modes.");
            return;
        }
        await using var channel = new FolderChannel(folder);
        await channel.DeliverAsync(Mails.Make(), Stop);

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(folder, "one@example.org.eml")));
    }

    [Fact]
    public async Task A_mail_that_is_there_already_is_left_as_it_is_and_counts_as_delivered()
    {
        Directory.CreateDirectory(folder);
        string file = Path.Combine(folder, "one@example.org.eml");
        await File.WriteAllTextAsync(file, "from an earlier run", Stop);
        await using var channel = new FolderChannel(folder);

        Assert.Equal(new DeliveryOutcome.Accepted(file), await channel.DeliverAsync(Mails.Make(), Stop));
        Assert.Equal("from an earlier run", await File.ReadAllTextAsync(file, Stop));
    }

    [Fact]
    public async Task What_a_killed_process_left_unfinished_is_cleared_and_other_files_stay()
    {
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(Path.Combine(folder, ".unfinished-0123"), "half a ma", Stop);
        await File.WriteAllTextAsync(Path.Combine(folder, "notes.txt"), "mine", Stop);
        await using var channel = new FolderChannel(folder);

        await channel.DeliverAsync(Mails.Make(), Stop);

        Assert.Equal(["notes.txt", "one@example.org.eml"], Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_process_killed_between_naming_and_tidying_leaves_one_mail()
    {
        // The name is given by a second link to the same file; a kill between that and removing the first leaves both.
        await using (var channel = new FolderChannel(folder)) await channel.DeliverAsync(Mails.Make(), Stop);
        string file = Path.Combine(folder, "one@example.org.eml");
        File.Copy(file, Path.Combine(folder, ".unfinished-4567"));
        await using var again = new FolderChannel(folder);

        Assert.Equal(new DeliveryOutcome.Accepted(file), await again.DeliverAsync(Mails.Make(), Stop));
        Assert.Equal([file], Directory.EnumerateFileSystemEntries(folder));
    }

    [Fact]
    public async Task Channels_on_one_folder_deliver_each_mail_once_though_they_start_together()
    {
        // Each channel composes for itself, as each process would: a mail object is not for several threads.
        static MimeMessage[] Compose() => [.. Enumerable.Range(0, 20).Select(number => Mails.Make($"mail-{number}@example.org"))];
        (FolderChannel Channel, MimeMessage[] Mails)[] processes = [.. Enumerable.Range(0, 4).Select(_ => (new FolderChannel(folder), Compose()))];

        DeliveryOutcome[] outcomes = await Task.WhenAll(
            processes.SelectMany(process => process.Mails.Select(mail => Task.Run(() => process.Channel.DeliverAsync(mail, Stop), Stop))));

        Assert.All(outcomes, outcome => Assert.IsType<DeliveryOutcome.Accepted>(outcome));
        MimeMessage[] mails = Compose();
        string[] files = [.. Directory.EnumerateFileSystemEntries(folder)];
        Assert.Equal(mails.Select(mail => $"{mail.MessageId}.eml").Order(StringComparer.Ordinal), files.Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(mails, mail => Assert.Equal(Composers.BytesOf(mail), File.ReadAllBytes(Path.Combine(folder, $"{mail.MessageId}.eml"))));
    }

    [Theory]
    [InlineData("../../outside@example.org")]
    [InlineData("..\\outside@example.org")]
    [InlineData("/etc/outside@example.org")]
    [InlineData("C:outside@example.org")]
    [InlineData(".hidden@example.org")]
    public async Task No_message_id_leads_out_of_the_folder(string id)
    {
        await using var channel = new FolderChannel(folder);
        MimeMessage mail = Mails.Make();
        mail.Headers[HeaderId.MessageId] = $"<{id}>";

        var accepted = Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(mail, Stop));

        Assert.Equal(folder, Path.GetDirectoryName(accepted.Where));
        Assert.True(File.Exists(accepted.Where), accepted.Where);
        Assert.DoesNotContain(Path.GetFileName(accepted.Where), each => each is '/' or '\\' or ':');
        Assert.Equal([folder], Directory.EnumerateFileSystemEntries(parent));
    }

    [Fact]
    public async Task Different_message_ids_never_share_a_file_and_long_ones_still_fit()
    {
        await using var channel = new FolderChannel(folder);
        string[] ids = ["a/b@x", "a%2Fb@x", "a\\b@x", $"{new string('a', 400)}@x", $"{new string('a', 400)}@y"];
        foreach (string id in ids)
        {
            MimeMessage mail = Mails.Make();
            mail.Headers[HeaderId.MessageId] = $"<{id}>";
            Assert.Equal(id, mail.MessageId);
            Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(mail, Stop));
        }

        Assert.Equal(ids.Length, Directory.EnumerateFiles(folder).Count());
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_an_outcome_with_what_to_check()
    {
        await File.WriteAllTextAsync(folder, "a file in the way", Stop);
        await using var channel = new FolderChannel(folder);

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("Check that the folder can be written to", refused.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stopped_delivery_leaves_nothing_behind()
    {
        await using var channel = new FolderChannel(folder);
        using var stopped = new CancellationTokenSource();
        await stopped.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => channel.DeliverAsync(Mails.Make(), stopped.Token));

        Assert.False(Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any());
    }
}
