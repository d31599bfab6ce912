using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class RootZoneTests
{
    private const double Missing = double.NaN;
    private const double Tolerance = 1e-9;

    private static readonly Gen<TurfType> Turf = Gen.Enum<TurfType>();

    /// <summary>From 50 mm of roots in sand to half a metre in silt loam.</summary>
    private static readonly Gen<double> Total = Gen.Double[3, 95];

    private static readonly Gen<double> Rain = Gen.OneOf(Gen.Const(0.0), Gen.Const(0.0), Gen.Double[0, 40]);

    private static readonly Gen<bool> IsMissing = Gen.Int[0, 9].Select(number => number == 0);

    [Fact]
    public void Whatever_was_missing_at_the_start_and_came_on_days_not_known_the_truth_stays_in_the_range() =>
        Gen.Select(Turf, Total, Gen.Double[0, 1], Gen.Select(Gen.Double[0, 10], Rain, IsMissing, IsMissing).Array[90]).Sample(
            (turf, total, startShare, days) =>
            {
                var truth = new RootZone(startShare * total, startShare * total);
                RootZone known = RootZone.Unknown(total);
                foreach ((double reference, double rain, bool referenceIsMissing, bool rainIsMissing) in days)
                {
                    truth = truth.Next(turf, total, reference, rain);
                    known = known.Next(turf, total, referenceIsMissing ? Missing : reference, rainIsMissing ? Missing : rain);
                    Assert.InRange(truth.LeastMm, known.LeastMm - Tolerance, known.MostMm + Tolerance);
                    Assert.InRange(known.LeastMm, 0, known.MostMm + Tolerance);
                    Assert.InRange(known.MostMm, 0, total);
                }
            },
            iter: 2000,
            seed: "0000KXKkWK54");

    [Fact]
    public void More_rain_or_watering_on_any_day_never_leaves_more_missing_on_any_later_one() =>
        Gen.Select(Turf, Total, Gen.Select(Gen.Double[0, 12], Rain).Array[60], Gen.Int[0, 59], Gen.Double[0, 30], Gen.Bool).Sample(
            (turf, total, days, changed, more, isRain) =>
            {
                RootZone dry = RootZone.Unknown(total);
                RootZone wet = dry;
                for (int i = 0; i < days.Length; i++)
                {
                    (double reference, double rain) = days[i];
                    double extra = i == changed ? more : 0;
                    dry = dry.Next(turf, total, reference, rain);
                    wet = wet.Next(turf, total, reference, rain + (isRain ? extra : 0), irrigationMm: isRain ? 0 : extra);
                    Assert.True(wet.LeastMm <= dry.LeastMm + Tolerance && wet.MostMm <= dry.MostMm + Tolerance);
                }
            },
            iter: 2000,
            seed: "0000KXKkWK54");

    [Fact]
    public void The_column_is_the_steps_one_after_the_other() =>
        Gen.Select(Turf, Total, Gen.Select(Gen.Double[0, 10], Rain, IsMissing, Gen.Double[-9, 3]).Array[50], Gen.Int[0, 49]).Sample(
            (turf, total, days, refilled) =>
            {
                double[] reference = [.. days.Select(day => day.Item1)];
                double[] rain = [.. days.Select(day => day.Item3 ? Missing : day.Item2)];
                double[] irrigation = [.. days.Select(day => Math.Max(0, day.Item4))];
                double[] column = RootZoneColumn.Mm(turf, total, reference, rain, new HashSet<int> { refilled }, irrigation);
                RootZone zone = RootZone.Unknown(total);
                for (int i = 0; i < column.Length; i++)
                {
                    zone = zone.Next(turf, total, reference[i], rain[i], i == refilled, irrigation[i]);
                    Assert.Equal(zone.DepletionMm, column[i]);
                }
            },
            iter: 300,
            seed: "0000KXKkWK54");

    // By hand from FAO-56 equations 82 to 85 (MEMORY): TAW 51 mm, ET0 4, Kc 0.95: ETc 3.8, p = 0.4 + 0.04 (5 - 3.8) = 0.448, RAW 22.848. At 40 mm missing Ks = (51 - 40)/(0.552 x 51) = 0.39074, so that
    // 1.4848 mm are used.
    [Theory]
    [InlineData(10, 4, 0, 13.8)]
    [InlineData(10, 4, 6, 7.8)]
    [InlineData(10, 4, 0.7, 13.8)] // below 0.2 ET0
    [InlineData(10, 4, 0.9, 12.9)]
    [InlineData(10, 4, 50, 0)]
    [InlineData(40, 4, 0, 41.4848)]
    [InlineData(51, 4, 0, 51)]
    public void A_day_takes_what_the_turf_uses_and_gives_what_the_rain_brings(double missing, double reference, double rain, double expected)
    {
        RootZone next = new RootZone(missing, missing).Next(TurfType.CoolSeason, 51, reference, rain);
        Assert.Equal(expected, next.DepletionMm, 0.0001);
    }

    [Fact]
    public void A_watering_of_known_depth_counts_in_full_and_one_of_unknown_depth_may_have_brought_anything()
    {
        var dry = new RootZone(30, 30);
        Assert.Equal(30 + 3.8 * 0.74591 - 12, dry.Next(TurfType.CoolSeason, 51, 4, 0, irrigationMm: 12).DepletionMm, 0.001);
        RootZone unknown = dry.Next(TurfType.CoolSeason, 51, 4, 0, irrigationMm: Missing);
        Assert.Equal(0, unknown.LeastMm);
        Assert.True(unknown.MostMm > 30);
        Assert.Equal(0, dry.Next(TurfType.CoolSeason, 51, 4, 0, isWatered: true).DepletionMm);
    }

    [Fact]
    public void At_the_start_of_a_record_it_is_not_known_until_soaking_rain_or_a_long_drought_says_it()
    {
        RootZone start = RootZone.Unknown(51);
        Assert.True(double.IsNaN(start.DepletionMm));
        Assert.True(double.IsNaN(start.Next(TurfType.CoolSeason, 51, 4, 10).DepletionMm));
        Assert.Equal(0, start.Next(TurfType.CoolSeason, 51, 4, 80).DepletionMm);
        RootZone drought = start;
        for (int day = 0; day < 40; day++) drought = drought.Next(TurfType.CoolSeason, 51, 6, 0);
        Assert.InRange(drought.DepletionMm, 45, 51);
    }

    [Fact]
    public void Without_any_rain_column_nothing_is_known_on_any_day()
    {
        double[] reference = [.. Enumerable.Repeat(4.0, 100)];
        Assert.All(RootZoneColumn.Mm(TurfType.CoolSeason, 51, reference, [], new HashSet<int>()), value => Assert.True(double.IsNaN(value)));
    }

    [Theory]
    [InlineData(49)]
    [InlineData(2001)]
    [InlineData(Missing)]
    public void Roots_of_an_impossible_depth_are_refused(double depth) => Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.TotalMm(SoilTexture.Loam, depth));

    [Fact]
    public void A_column_allocates_nothing_for_its_days_but_itself()
    {
        double[] reference = [.. Enumerable.Range(0, 7000).Select(day => 2.0 + day % 5)];
        double[] rain = [.. Enumerable.Range(0, 7000).Select(day => day % 9 == 0 ? 15.0 : 0)];
        var none = new HashSet<int>();
        RootZoneColumn.Mm(TurfType.CoolSeason, 51, reference, rain, none);
        long before = GC.GetAllocatedBytesForCurrentThread();
        RootZoneColumn.Mm(TurfType.CoolSeason, 51, reference, rain, none);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, reference.Length * sizeof(double) + 1024);
    }
}
