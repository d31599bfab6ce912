using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class WateringTests
{
    [Fact]
    public void What_is_due_refills_the_roots_and_gives_the_losses_on_top()
    {
        Watering due = Watering.Due(20, 18, 0, SoilTexture.Loam, efficiency: 0.8)!;
        Assert.Equal(20, due.NetMm);
        Assert.Equal(25, due.GrossMm, 9);
        Assert.Null(Watering.Due(17.9, 18, 0, SoilTexture.Loam));
    }

    [Fact]
    public void Rain_ahead_that_nobody_knows_counts_as_none() => Assert.Equal(20, Watering.Due(20, 18, double.NaN, SoilTexture.Loam)!.NetMm);

    // By hand: 25 mm/h on a loam that takes 10 leaves 15 mm/h standing, so 5 mm after 20 minutes, in which 8.33 mm came: 20 mm need 3 parts. A clay that takes 3: 5.68 mm a part, 4 parts.
    [Theory]
    [InlineData(SoilTexture.Sand, 25, 1)]
    [InlineData(SoilTexture.Loam, 25, 3)]
    [InlineData(SoilTexture.Clay, 25, 4)]
    [InlineData(SoilTexture.Loam, 10, 1)]
    public void Water_that_comes_faster_than_the_soil_takes_it_in_is_given_in_parts(SoilTexture soil, double rate, int cycles) =>
        Assert.Equal(cycles, Watering.Due(20, 18, 0, soil, efficiency: 1, rateMmPerHour: rate)!.Cycles);

    [Fact]
    public void No_part_leaves_more_standing_than_turf_holds_and_a_finer_soil_never_needs_fewer_parts() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[0.3, 1], Gen.Double[1, 60]).Sample(
            (missing, efficiency, rate) =>
            {
                int last = 0;
                foreach (SoilTexture soil in Enum.GetValues<SoilTexture>())
                {
                    Watering due = Watering.Due(missing, 1, 0, soil, efficiency, rate)!;
                    double part = due.GrossMm / due.Cycles;
                    Assert.True(part - part / rate * TurfWater.InfiltrationMmPerHour(soil) <= 5 + 1e-9);
                    Assert.True(due.Cycles >= last);
                    last = due.Cycles;
                }
            },
            iter: 500,
            seed: "0000KXKkWK54");

    [Theory]
    [InlineData(0, 25)]
    [InlineData(1.1, 25)]
    [InlineData(0.75, 0)]
    [InlineData(double.NaN, 25)]
    public void An_impossible_sprinkler_is_refused(double efficiency, double rate) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Watering.Due(20, 18, 0, SoilTexture.Loam, efficiency, rate));

    // Science reference 3.8 (CALC with p 0.4 at an ETc of 4.25 mm): 4.8 days on loam with 300 mm of roots. With p moved by the use, 0.43, it is 5.16; twice a week at most.
    [Fact]
    public void The_usual_interval_on_loam_in_midsummer_is_five_days()
    {
        double reference = 4.25 / TurfWater.Coefficient(TurfType.CoolSeason);
        Assert.Equal(0.43 * 51 / 4.25, Watering.IntervalDays(TurfType.CoolSeason, RootZone.TotalMm(SoilTexture.Loam), reference), 9);
        Assert.True(double.IsPositiveInfinity(Watering.IntervalDays(TurfType.CoolSeason, 51, 0)));
    }

    // Science reference 3.8: "once or twice a week" is only true with 300 mm of roots on loam or heavier. A hot dry July at 40° north (highs 33, lows 20 °C), refilled whenever it is due.
    [Theory]
    [InlineData(SoilTexture.Loam, 3, 9)]
    [InlineData(SoilTexture.SiltLoam, 3, 9)]
    [InlineData(SoilTexture.ClayLoam, 3, 9)]
    [InlineData(SoilTexture.Clay, 3, 9)]
    [InlineData(SoilTexture.Sand, 10, 31)]
    public void A_dry_July_takes_one_or_two_waterings_a_week_on_loam_or_heavier_and_more_on_sand(SoilTexture soil, int fewest, int most)
    {
        double total = RootZone.TotalMm(soil);
        var zone = new RootZone(0, 0);
        int waterings = 0;
        for (int day = 182; day <= 212; day++)
        {
            double reference = Hargreaves.Mm(20, 33, ExtraterrestrialRadiation.MJPerM2(40, day));
            Assert.InRange(reference, 5, 7);
            zone = zone.Next(TurfType.CoolSeason, total, reference, 0);
            if (Watering.Due(zone.DepletionMm, RootZone.AllowedMm(TurfType.CoolSeason, total, reference), 0, soil) is null) continue;
            waterings++;
            zone = new RootZone(0, 0);
        }

        Assert.InRange(waterings, fewest, most);
    }
}
