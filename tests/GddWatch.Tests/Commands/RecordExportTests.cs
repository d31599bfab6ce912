using CsCheck;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>What is exported is the journal, and comes back as the same one.</summary>
public sealed class RecordExportTests
{
    private static readonly string[] Texts = ["", "a, \"quoted\" text", "größer ° 🌱", "=1+1", "'", "\"", "#", "a;b\u00a0c", "0", "NULL"];

    private static readonly Gen<string> SomeText = Gen.OneOf(Gen.Int[0, Texts.Length - 1].Select(i => Texts[i]), Gen.String[Gen.Char[' ', '~'], 0, 40].Select(text => text.Trim()));

    // As they come from thermometers, as reckoned from Fahrenheit, and as near to nothing as only reckoning gives.
    private static readonly Gen<Temperature> SomeTemperature = Gen.OneOf(
        Gen.Int[-300, 600].Select(tenths => Temperature.FromCelsius(tenths / 10.0)),
        Gen.Int[-220, 1400].Select(tenths => Temperature.FromFahrenheit(tenths / 10.0)),
        Gen.Double[-30, 60].Select(Temperature.FromCelsius),
        Gen.Double[-1e-4, 1e-4].Select(Temperature.FromCelsius));

    private static readonly Gen<Depth> SomeDepth = Gen.OneOf(Gen.Double[2, 20].Select(Depth.FromCentimetres), Gen.Int[8, 78].Select(tenths => Depth.FromInches(tenths / 10.0)));

    private static readonly Gen<JournalEntry> SomeEntry = Gen.Select(Gen.Int[0, 1], Gen.Int[0, 60], Gen.Int[0, 3], SomeText, SomeText, Gen.Int[0, 1439], SomeDepth, SomeTemperature).Select(
        JournalEntry (site, days, kind, note, active, minute, depth, value) =>
        {
            string siteId = site == 0 ? "north-common" : "mill-green";
            DateOnly on = new DateOnly(2025, 11, 1).AddDays(days);
            return kind switch
            {
                0 => new TreatmentDone { SiteId = siteId, On = on, Note = note, Treatment = "overseeding", Active = active, NoSeedUntil = minute % 3 == 0 ? null : on.AddDays(minute % 200) },
                1 => new SoilReading { SiteId = siteId, On = on, Note = note, At = minute % 3 == 0 ? null : new TimeOnly(minute / 60, minute % 60), Depth = depth, Value = value },
                2 => new Sighting { SiteId = siteId, On = on, Note = note, What = minute % 2 == 0 ? "first-beetle" : "first-seedlings" },
                _ => new Mowing { SiteId = siteId, On = on, Note = note },
            };
        });

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_exported_is_imported_as_the_same_journal_and_importing_it_where_it_came_from_changes_nothing()
    {
        int entries = 0, mended = 0;
        await Gen.Select(SomeEntry.Array[0, 40], Gen.Int[1, 40]).SampleAsync(
            async sample =>
            {
                (JournalEntry[] recorded, int withdrawn) = sample;
                using Workshop one = Workshop.WithSamples();
                using Workshop two = Workshop.WithSamples();
                await FillAsync(one, recorded, withdrawn);
                IReadOnlyList<KeptEntry> history = await HistoryAsync(one);
                JournalEntry[] inForce = [.. history.Where(kept => kept.IsInForce).Select(kept => kept.Entry)];
                foreach (string[] all in new string[][] { [], ["--all"] })
                {
                    string file = Path.Combine(one.Folder, "export.csv");
                    Assert.Equal(0, (await one.RunAsync(["record", "export", file, .. all])).Code);

                    Ran back = await one.RunAsync("record", "import", file);
                    Assert.Equal((0, ""), (back.Code, back.Error));
                    Assert.Equal(history, await HistoryAsync(one));

                    Ran there = await two.RunAsync("record", "import", file);
                    Assert.Equal((0, ""), (there.Code, there.Error));
                    Assert.Equal(inForce, (await HistoryAsync(two)).Select(kept => kept.Entry));
                }

                entries += history.Count;
                mended += history.Count - inForce.Length;
            },
            iter: 25,
            threads: 1);
        Assert.True(entries > 100 && mended > 10, $"{entries} entries, {mended} of them mended or withdrawn");
    }

    [Fact]
    public async Task An_export_goes_to_the_output_or_over_an_earlier_export_and_over_nothing_else()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("record", "reading", "--site", "north-common", "--at", "2026-01-10 08:00", "--depth", "2 in", "--value", "50 °F", "--note", "by the oak, \"low\"");
        const string Table = "kind,site,on,at,treatment,active,no-seed-until,what,depth,value,note\nreading,north-common,,2026-01-10 08:00,,,,,5.08 cm,10 °C,\"by the oak, \"\"low\"\"\"\n";
        Assert.Equal(Table, (await workshop.RunAsync("record", "export")).Output);

        string file = Path.Combine(workshop.Folder, "export.csv");
        Assert.Equal($"Written: 1 entry, to {file}.\n", (await workshop.RunAsync("record", "export", file)).Output);
        await workshop.RunAsync("record", "mowing", "--site", "north-common", "--on", "2026-01-11");
        Assert.Equal($"Written: 2 entries, to {file}.\n", (await workshop.RunAsync("record", "export", file)).Output);
        Assert.Equal($"{Table}mowing,north-common,2026-01-11,,,,,,,,\n", await File.ReadAllTextAsync(file, Stop));

        string mine = Path.Combine(workshop.Config, "region.yaml");
        string before = await File.ReadAllTextAsync(mine, Stop);
        Ran refused = await workshop.RunAsync("record", "export", mine);
        Assert.Equal(2, refused.Code);
        Assert.Contains("left as it is", refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllTextAsync(mine, Stop));
    }

    private static async Task FillAsync(Workshop workshop, JournalEntry[] entries, int withdrawn)
    {
        await using Database database = await Database.OpenAsync(DataFolder.Database(workshop.Data), workshop.Clock, Stop);
        JournalStore store = new(database);
        await store.RecordAsync(entries, null, workshop.Clock.GetUtcNow(), Stop);
        if ((await store.LoadHistoryAsync(Stop)).FirstOrDefault(kept => kept.Number >= withdrawn && kept.IsInForce) is { } kept)
        {
            await store.WithdrawAsync(kept.Number, "a slip, as \"said\"", workshop.Clock.GetUtcNow(), Stop);
        }
    }

    private static Task<IReadOnlyList<KeptEntry>> HistoryAsync(Workshop workshop) => Journals.LoadHistoryAsync(workshop.Keeping, Stop);
}
