using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Places;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Invented lines in the formats of GHCN-Daily.</summary>
internal static class GhcnLines
{
    public const string Station = "USW00099999";

    public static ArchiveFeedDefinition Dly(string files = "*.dly", string? station = null, ObservationTime? observedAt = null) =>
        new(ArchiveKind.GhcnDailyDly, files, station, observedAt);

    public static ArchiveFeedDefinition StationCsv(string files = "*.csv", string? station = null) => new(ArchiveKind.GhcnDailyStationCsv, files, station);

    public static ArchiveFeedDefinition ByYear(string files = "*.csv", string? station = Station) => new(ArchiveKind.GhcnDailyByYearCsv, files, station);

    /// <summary>A line of a .dly file for a month of 2024: the same value every day, save those given by their day.</summary>
    public static string DlyLine(string element, int month, int value, string station = Station, params (int Day, int Value, string Flags)[] other)
    {
        StringBuilder line = new($"{station}2024{month:00}{element}");
        for (int day = 1; day <= 31; day++)
        {
            (int Day, int Value, string Flags) own = Array.Find(other, each => each.Day == day);
            bool isThere = day <= DateTime.DaysInMonth(2024, month);
            string text = own.Day == day ? own.Value.ToString(CultureInfo.InvariantCulture) : isThere ? value.ToString(CultureInfo.InvariantCulture) : "-9999";
            line.Append(text.PadLeft(5)).Append(own.Day == day ? own.Flags : isThere ? "  0" : "   ");
        }

        return line.ToString();
    }

    public static Task<FeedReading> ReadAsync(FeedFolder folder, ArchiveFeedDefinition definition, Site? site = null) =>
        FeedFactory.Create(definition, folder.Root, folder.Clock).ReadAsync(site ?? FeedFolder.SiteAt(45), FeedFolder.Today, TestContext.Current.CancellationToken);
}
