using GddWatch.Storage.Sql;

namespace GddWatch.Storage.Upkeep;

/// <summary>What is exported beside the journal, which has a form of its own that can be read back.</summary>
public static class ExportedTables
{
    private static readonly ExportedColumn Site = new("site", "the site's id");
    private static readonly ExportedColumn Treatment = new("treatment", "the treatment's id");
    private static readonly ExportedColumn Season = new("season", "the year in which the season begins");
    private static readonly ExportedColumn Feed = new("feed", "the feed's name");
    private static readonly ExportedColumn Variable = new("variable", "what it is a value of; the unit is the end of its name: C is °C, Mm is mm, MJ is MJ/m², Percent is %, MPerS is m/s");

    /// <summary>All of them. A test holds them to the tables and columns of the database.</summary>
    public static IReadOnlyList<ExportedTable> All { get; } =
    [
        new(
            "kept_window",
            "The windows as they were judged last, one row for a site, a treatment and a season.",
            [
                Site, Treatment, Season,
                new("state", "waiting, nearing, open, closing, closed, held, done or unknown"), new("since", "since which day it is in that state"), new("reason", "why, in a sentence"),
                new("opened", "the day it first opened, or nothing"), new("past_best", "the day it went past its best, or nothing"), new("closed_on", "the day it closed last after opening, or nothing"),
                new("judged_on", "the day as of which it was judged"), new("weather_through", "the last day whose weather was known then, or nothing"),
                new("configuration", "the fingerprint of the configuration that judged"), new("configuration_note", "what the last change of the configuration changed here, or nothing"),
            ],
            ExportSql.Windows),
        new("judged_site", "The day as of which each site was judged last.", [Site, new("judged_on", "that day")], ExportSql.JudgedSites),
        new(
            "told",
            "What was told to whom: one row for each notice and person.",
            [
                Site, Treatment, Season,
                new("kind", "the kind of notice"), new("revision", "0 for what was told first, counted up with each correction"), new("address", "the person's address in lower case"),
                new("day", "the day whose judging made it"), new("fact", "the day that it named, or nothing"), new("configuration", "the fingerprint of the configuration that judged"),
                new("message_id", "the message that carries it, in message.csv"),
            ],
            ExportSql.Told),
        new(
            "message",
            "The queue of mails and what became of them, in the order of queueing.",
            [
                new("queue_order", "the order in which they were queued"), new("message_id", "the mail's Message-ID"), new("address", "the addressee"), new("day", "the day whose judging made it"),
                new("state", "queued, delivered or refused"), new("queued_at", "when it was queued"), new("not_before", "the instant before which it is not tried"),
                new("claim_owner", "the worker that has it in hand, or nothing"), new("claimed_until", "until when, or nothing"), new("attempts", "how often it was tried"),
                new("last_outcome", "delivered, refused-for-now, refused-for-good, unknown, or nothing before the first attempt"), new("last_words", "the server's last words, or where it went"),
                new("settled_at", "when it was delivered or refused for good, or nothing"), new("first_tried_at", "when it was tried first, or nothing"),
                new("withdrawn_at", "when it was withdrawn since it was no longer true, or nothing"), new("body", "what it says, as JSON"),
            ],
            ExportSql.Messages),
        new(
            "refusing_address",
            "Addresses that refused mails for good, one after the other.",
            [
                new("address", "the address in lower case"), new("refusals", "how many mails in a row"), new("last_words", "what the server said last"), new("last_at", "when"),
                new("paused_at", "since when nothing is sent there, or nothing"), new("resumed_at", "when somebody asked for it to be tried again, or nothing"),
            ],
            ExportSql.RefusingAddresses),
        new(
            "daily_value",
            "Values of days as they came in from feeds, with those that their source has changed since.",
            [
                Site, Feed, new("day", "the day"), Variable, new("value", "the value in that unit"), new("seen_at", "when it was first seen"),
                new("replaced_at", "until when it stood; nothing where it stands"),
            ],
            ExportSql.DailyValues),
        new(
            "forecast_value",
            "Forecasts as they were issued.",
            [Site, Feed, new("issued_at", "when it was asked for"), new("issued_on", "on which day of the site that was"), new("day", "the day that it speaks of"), Variable, new("value", "the value in that unit")],
            ExportSql.ForecastValues),
        new(
            "feed_position",
            "Where a feed said that its values are of.",
            [Site, Feed, new("seen_at", "when it first said so"), new("latitude", "degrees, north is positive"), new("longitude", "degrees, east is positive"), new("elevation_m", "height in m, or nothing")],
            ExportSql.FeedPositions),
        new("region_value", "Single values kept for the whole region.", [new("name", "its name"), new("value", "the value")], ExportSql.RegionValues),
    ];
}
