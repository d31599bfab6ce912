using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Notices.Composing;
using Ical.Net;
using Xunit;

namespace GddWatch.Tests.Notices.Channels;

public sealed class CalendarFolderTests : IDisposable
{
    private readonly string folder = Path.Combine(Directory.CreateTempSubdirectory("gddwatch-calendar-").FullName, "calendar");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(folder)!, recursive: true);

    [Fact]
    public async Task There_is_one_file_of_all_windows_and_one_of_each_site()
    {
        Assert.Null(await WriteAsync(["north-common", "windows"]));
        Assert.Equal(["_windows.ics", "north-common.ics", "windows.ics"], Files());
        Calendar all = Read("windows.ics");
        Assert.Equal(2, all.Events.Count);
        Assert.Equal("Alder Reach: windows of lawn tasks", all.Properties["X-WR-CALNAME"]!.Value);
        Assert.Equal("Alder Reach: windows of lawn tasks", all.Properties["NAME"]!.Value);
        Assert.Contains("REFRESH-INTERVAL;VALUE=DURATION:PT12H\r\n", File.ReadAllText(Path.Combine(folder, "windows.ics")), StringComparison.Ordinal);
        Assert.Equal("north-common.spring-pre-emergent.2026@example.org", Assert.Single(Read("north-common.ics").Events).Uid);
        Assert.Equal("windows.spring-pre-emergent.2026@example.org", Assert.Single(Read("_windows.ics").Events).Uid);
    }

    [Fact]
    public async Task The_same_windows_give_the_same_bytes_and_what_is_gone_goes()
    {
        await WriteAsync(["north-common", "mill-green"]);
        byte[] before = File.ReadAllBytes(Path.Combine(folder, "north-common.ics"));
        File.WriteAllText(Path.Combine(folder, "mill-green.ics.unfinished"), "cut off");
        File.WriteAllText(Path.Combine(folder, "index.html"), "somebody's own");
        await WriteAsync(["north-common"]);
        Assert.Equal(["index.html", "north-common.ics", "windows.ics"], Files());
        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder, "north-common.ics")));
    }

    [Fact]
    public async Task A_calendar_that_says_nothing_new_is_left_alone_and_one_that_does_is_written()
    {
        await WriteAsync(["north-common", "mill-green"]);
        string still = File.ReadAllText(Path.Combine(folder, "north-common.ics")), moved = File.ReadAllText(Path.Combine(folder, "mill-green.ics"));
        Dictionary<string, IReadOnlyList<Notice>> windows = WindowsOf(["north-common", "mill-green"]);
        var later = new Dictionary<string, IReadOnlyList<Notice>>(windows) { ["mill-green"] = [.. windows["mill-green"].Select(notice => notice with { Reason = "It is another day." })] };
        Assert.Null(await WriteAsync(new CalendarFolder(folder), RegionOf(["north-common", "mill-green"]), later, SampleMessages.QueuedAt.AddDays(1)));
        Assert.Equal(still, File.ReadAllText(Path.Combine(folder, "north-common.ics")));
        string now = File.ReadAllText(Path.Combine(folder, "mill-green.ics"));
        Assert.Contains("It is another day.", now, StringComparison.Ordinal);
        Assert.NotEqual(StampOf(moved), StampOf(now));
    }

    [Fact]
    public async Task Written_by_the_same_folder_again_only_what_says_something_new_or_is_gone_is_written()
    {
        var calendars = new CalendarFolder(folder);
        string[] sites = ["north-common", "mill-green", "old-orchard"];
        Dictionary<string, IReadOnlyList<Notice>> windows = WindowsOf(sites);
        Assert.Null(await WriteAsync(calendars, RegionOf(sites), windows, SampleMessages.QueuedAt));
        string[] before = [.. sites.Select(site => File.ReadAllText(Path.Combine(folder, $"{site}.ics")))];
        var later = new Dictionary<string, IReadOnlyList<Notice>>(windows) { ["mill-green"] = [.. windows["mill-green"].Select(notice => notice with { Reason = "It is another day." })] };
        File.Delete(Path.Combine(folder, "old-orchard.ics"));
        Assert.Null(await WriteAsync(calendars, RegionOf(sites), later, SampleMessages.QueuedAt.AddDays(1)));
        string[] now = [.. sites.Select(site => File.ReadAllText(Path.Combine(folder, $"{site}.ics")))];
        Assert.Equal(before[0], now[0]);
        Assert.Contains("It is another day.", now[1], StringComparison.Ordinal);
        Assert.Equal("DTSTAMP:20260414T113000Z", StampOf(now[2]));
    }

    [Fact]
    public async Task A_region_of_more_sites_than_a_calendar_program_bears_has_no_file_of_all_windows()
    {
        string[] sites = [.. Enumerable.Range(0, CalendarFolder.MostSitesInOne + 1).Select(place => $"lawn-{place}")];
        await WriteAsync(sites[..CalendarFolder.MostSitesInOne]);
        Assert.Contains("windows.ics", Files());
        Assert.Null(await WriteAsync(new CalendarFolder(folder), RegionOf(sites), WindowsOf(sites[..1]), SampleMessages.QueuedAt));
        Assert.DoesNotContain("windows.ics", Files());
        Assert.Contains("lawn-0.ics", Files());
    }

    private static string StampOf(string calendar) => calendar.Split("\r\n").First(line => line.StartsWith("DTSTAMP:", StringComparison.Ordinal));

    [Fact]
    public async Task A_site_that_could_not_be_judged_keeps_its_file()
    {
        await WriteAsync(["north-common", "mill-green"]);
        Assert.Null(await WriteAsync(new CalendarFolder(folder), RegionOf(["north-common", "mill-green"]), WindowsOf(["north-common"]), SampleMessages.QueuedAt));
        Assert.Equal(["mill-green.ics", "north-common.ics", "windows.ics"], Files());
    }

    [Fact]
    public async Task A_site_whose_calendar_cannot_be_made_keeps_its_file_and_the_others_are_written()
    {
        await WriteAsync(["north-common", "mill-green"]);
        string[] still = File.ReadAllLines(Path.Combine(folder, "mill-green.ics"));
        Dictionary<string, IReadOnlyList<Notice>> windows = WindowsOf(["north-common", "mill-green"]);
        windows["mill-green"] = [.. windows["mill-green"].Select(notice => notice with { Headline = null! })];
        windows["north-common"] = [.. windows["north-common"].Select(notice => notice with { Reason = "It is another day." })];
        var calendars = new CalendarFolder(folder);
        CalendarSheets sheets = calendars.Prepare(RegionOf(["north-common", "mill-green"]), windows, TestContext.Current.CancellationToken);
        Assert.StartsWith("The calendar of mill-green could not be made:", Assert.Single(sheets.Failures), StringComparison.Ordinal);
        Assert.Null(await calendars.WriteAsync(sheets, SampleMessages.QueuedAt.AddDays(1), TestContext.Current.CancellationToken));
        Assert.Equal(still, File.ReadAllLines(Path.Combine(folder, "mill-green.ics")));
        Assert.Contains("It is another day.", File.ReadAllText(Path.Combine(folder, "north-common.ics")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_name_leads_out_of_the_folder()
    {
        await WriteAsync(["../../outside", "a/b"]);
        Assert.Equal(["%2E.%2F..%2Foutside.ics", "a%2Fb.ics", "windows.ics"], Files());
    }

    [Fact]
    public async Task They_are_for_the_owner_alone()
    {
        await WriteAsync(["north-common"]);
        if (OperatingSystem.IsWindows()) return;
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(folder, "windows.ics")));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
    }

    [Fact]
    public async Task Where_it_cannot_be_written_the_trouble_is_said()
    {
        File.WriteAllText(folder, "a file where the folder belongs");
        string? trouble = await WriteAsync(["north-common"]);
        Assert.StartsWith($"The calendars could not be written into {folder}:", trouble, StringComparison.Ordinal);
        Assert.EndsWith("the disk has room.", trouble, StringComparison.Ordinal);
    }

    private Task<string?> WriteAsync(string[] sites) =>
        WriteAsync(new CalendarFolder(folder), RegionOf(sites), WindowsOf(sites), SampleMessages.QueuedAt);

    private static Task<string?> WriteAsync(CalendarFolder calendars, Region region, IReadOnlyDictionary<string, IReadOnlyList<Notice>> windows, DateTimeOffset asOf) =>
        calendars.WriteAsync(calendars.Prepare(region, windows, TestContext.Current.CancellationToken), asOf, TestContext.Current.CancellationToken);

    private static Dictionary<string, IReadOnlyList<Notice>> WindowsOf(string[] sites) => sites.ToDictionary(
        site => site,
        IReadOnlyList<Notice> (site) => [SampleMessages.PreEmergent with { Key = SampleMessages.PreEmergent.Key with { Site = site }, Entry = SampleMessages.Entry }],
        StringComparer.Ordinal);

    private static Region RegionOf(string[] sites) => new()
    {
        Name = "Alder Reach",
        TimeZone = "America/Chicago",
        Units = ReadersUnits.UnitedStates,
        Sites = [.. sites.Select(site => new Site { Id = site, Name = site, Latitude = 41.6, Longitude = -93.3, ElevationM = 250, TimeZone = "America/Chicago", Turf = [TurfType.CoolSeason] })],
        Recipients = [],
        OperatorAddress = "operator@example.org",
    };

    private string[] Files() => [.. Directory.EnumerateFiles(folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    private Calendar Read(string file) => Calendar.Load(File.ReadAllText(Path.Combine(folder, file)))!;
}
