using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration;
using GddWatch.Configuration.Settings;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Notices.Composing;
using GddWatch.Watching;
using MimeKit;

namespace GddWatch.Commands;

/// <summary>How mails are written and by which channel they leave: a mail server where one is configured, else a folder.</summary>
internal sealed class Mailing(ServiceSettings settings, string dataFolder, MailComposer composer)
{
    public MailComposer Composer { get; } = composer;

    /// <summary>When a mail is given up, and when people want to be left in peace.</summary>
    public DeliveryRules RulesFor(Region region) => new(region, settings.GiveUpAfter);

    public TimeOnly PassAt => settings.DailyAt;

    /// <summary>The port on which the service says how it is; null for none.</summary>
    public int? HealthPort => settings.HealthPort;

    /// <summary>When the weekly bulletin goes out; null where there is none.</summary>
    public BulletinTime? Bulletin => settings.Bulletin;

    /// <summary>Where mails go, in words.</summary>
    public string Where => settings.MailServer is { } server ? $"the mail server {server}" : $"the folder {DataFolder.Mail(dataFolder)}, as files: no mail server is configured";

    /// <summary>Reads the settings and the templates; where they are wrong, says all that is wrong and gives null.</summary>
    public static Mailing? Open(string configFolder, string dataFolder, WatchConfiguration configuration, Terminal terminal)
    {
        SettingsReading reading = SettingsReader.Read(configFolder);
        foreach (string fault in reading.Faults) terminal.Error.WriteLine($"{Path.Combine(configFolder, SettingsReader.File)} or the environment: {fault}");
        if (reading.Settings is not { } settings) return null;
        string from = settings.MailServer?.From ?? configuration.Region.OperatorAddress;
        return Compose(configuration, new MailHeaderOptions { From = from }, terminal) is { } composer ? new Mailing(settings, dataFolder, composer) : null;
    }

    /// <summary>Whether a text is one bare mail address.</summary>
    public static bool IsAddress(string text) => MailboxAddress.TryParse(text, out MailboxAddress? parsed) && parsed.Address == text;

    /// <summary>What is wrong with the mail templates of a folder.</summary>
    public static IReadOnlyList<MailTemplateFault> TemplateFaults(string folder) =>
        new MailComposer(folder, new MailHeaderOptions { From = "service@example.org" }).Faults;

    /// <summary>The composer for mails that are not sent, such as a replay's.</summary>
    public static MailComposer? ReplayComposer(WatchConfiguration configuration, Terminal terminal) =>
        Compose(configuration, new MailHeaderOptions { From = configuration.Region.OperatorAddress }, terminal);

    public IDeliveryChannel OpenChannel(TimeProvider clock) =>
        settings.MailServer is { } server ? new SmtpChannel(server, clock) : new FolderChannel(DataFolder.Mail(dataFolder));

    /// <summary>Sends one test mail and says what became of it.</summary>
    public async Task<bool> SendTestAsync(string address, Workplace place, Terminal terminal, CancellationToken stop)
    {
        DateTimeOffset now = terminal.Clock.GetUtcNow();
        Message words = MessagePlan.ToOperator(["This is a test mail that somebody asked for. The way to you works.", $"It was asked for at {now:yyyy-MM-dd HH:mm:ss} UTC."], place.Region, place.Today);
        await using IDeliveryChannel channel = OpenChannel(terminal.Clock);
        DeliveryOutcome outcome = await channel.DeliverAsync(Composer.Compose(words with { Address = address }, now), stop);
        (string said, bool well) = outcome switch
        {
            DeliveryOutcome.Accepted accepted => ($"The test mail went out: {accepted.Where}", true),
            DeliveryOutcome.RefusedForNow refused => ($"The test mail was refused for now: {refused.Words}", false),
            DeliveryOutcome.RefusedForGood refused => ($"The test mail was refused for good: {refused.Words}", false),
            DeliveryOutcome.Unknown unknown => ($"The test mail may or may not have arrived: {unknown.Words}", false),
            _ => ("The test mail was not sent.", false),
        };
        (well ? terminal.Output : terminal.Error).WriteLine(said);
        return well;
    }

    private static MailComposer? Compose(WatchConfiguration configuration, MailHeaderOptions headers, Terminal terminal)
    {
        var composer = new MailComposer(configuration.MailTemplatesFolder, headers);
        if (!composer.HasPictures) terminal.Error.WriteLine("No font to draw with: the charts are left out of the mails, and their words stand alone.");
        if (composer.Faults.Count == 0) return composer;
        terminal.Error.WriteLine("The mail templates cannot be used:");
        foreach (MailTemplateFault fault in composer.Faults) terminal.Error.WriteLine($"  {fault}");
        return null;
    }
}
