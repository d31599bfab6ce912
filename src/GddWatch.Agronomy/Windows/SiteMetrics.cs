using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// Everything that conditions ask of a site's weather, as columns made once when first asked for. A pure function of the series: the columns kept here
/// are only remembered results. For one judging at a time, not shared between threads.
/// </summary>
public sealed class SiteMetrics
{
    /// <summary>How many days without an estimate at the start of a record are the soil model warming up, rather than a hole [days].</summary>
    private const int LongestWarmUpDays = 20;

    /// <summary>How many full years before this one the last years have [years].</summary>
    private const int RecentYears = 3;

    /// <summary>How far back a season looks at most before its first day [days]: a heat sum begins up to a year before it, and what is averaged or counted reaches some weeks farther, and more than the
    /// steps after which running means are summed afresh.</summary>
    private const int LooksBackDays = 366 + 60;

    private readonly Dictionary<Depth, SoilTemperatureColumns> soil = [];
    private readonly Dictionary<(Depth Depth, int Days), double[]> soilMeans = [];
    private readonly List<(HeatSumDefinition Definition, HeatSums Sums)> heatSums = [];
    private readonly TurfColumns turf;
    private readonly IReadOnlyList<DateOnly> watered;
    private readonly Func<Depth, SoilTemperatureColumns>? soilAhead;
    private readonly SiteMetrics? whole;
    private readonly SiteMetrics? recent;
    private readonly TurfSoilStand? soilBefore;
    private TurfSoilColumns? layers;

    private SiteMetrics(KnownWeather weather, Site site, SiteJournal journal, DailySeries? forecast, IReadOnlyList<DateOnly> watered, SiteMemory? memory = null)
    {
        Weather = weather;
        Site = site;
        Journal = journal;
        Forecast = forecast;
        this.watered = watered;
        turf = new TurfColumns(weather.Series, site, watered);
        Climate = new SiteClimate(this, memory ?? new SiteMemory());
        if (memory is null) return;
        memory.GoOnTo(weather.Series, journal);
        recent = RecentFrom(memory);
    }

    /// <summary>The metrics of the last years alone, from where soil and root zone stood before them.</summary>
    private SiteMetrics(SiteMetrics whole, DateOnly from, SiteMemory memory)
    {
        this.whole = whole;
        Weather = whole.Weather with { Series = whole.Series.From(from) };
        Site = whole.Site;
        Journal = whole.Journal;
        Forecast = whole.Forecast;
        watered = whole.watered;
        if (!SoilIsMeasured)
        {
            soilBefore = memory.Soils.TryGet(from, out TurfSoilStand? known)
                ? known!
                : memory.Soils.Keep(from, LayeredTurfSoil.Default.StandAfter(whole.Series.Until(from.AddDays(-1))!, Site.Latitude), from.AddDays(-1));
        }

        turf = new TurfColumns(Series, Site, watered, ZoneBefore);
        Climate = whole.Climate;

        RootZone ZoneBefore(TurfType grass)
        {
            if (memory.RootZones.TryGet((grass, from), out RootZone known)) return known;
            RootZone zone = new TurfColumns(whole.Series.Until(from.AddDays(-1))!, Site, watered).ZoneAtEnd(grass);
            return memory.RootZones.Keep((grass, from), zone, from.AddDays(-1));
        }
    }

    private SiteMetrics(SiteMetrics known, DailySeries series, Func<Depth, SoilTemperatureColumns>? soilAhead)
    {
        Weather = known.Weather with { Series = series };
        Site = known.Site;
        Journal = known.Journal;
        Forecast = series;
        watered = known.watered;
        this.soilAhead = soilAhead;
        turf = new TurfColumns(series, Site, watered);
        Climate = known.Climate;
    }

    /// <summary>The site's weather as it is known, with what is doubted and what was filled.</summary>
    public KnownWeather Weather { get; }

    /// <summary>The days of that weather.</summary>
    public DailySeries Series => Weather.Series;

    /// <summary>The site.</summary>
    public Site Site { get; }

    /// <summary>What was recorded here.</summary>
    public SiteJournal Journal { get; }

    /// <summary>The days to come as they were forecast on the last day; null where there is no forecast.</summary>
    public DailySeries? Forecast { get; }

    /// <summary>What is usual here, from earlier seasons.</summary>
    public SiteClimate Climate { get; }

    /// <summary>Whether the soil temperature is measured here rather than estimated.</summary>
    public bool SoilIsMeasured => Site.SoilTemperature == SoilSource.Measured;

    /// <summary>All the weather, where these are of its last years alone.</summary>
    internal SiteMetrics Whole => whole ?? this;

    /// <summary>How the soil stands at the end of the last day, as it is estimated without any reading.</summary>
    internal TurfSoilStand SoilStand => recent is not null && !SoilIsMeasured ? recent.SoilStand : Layers.After;

    private TurfSoilColumns Layers => layers ??= soilBefore is { } before ? LayeredTurfSoil.Columns(before, Series) : LayeredTurfSoil.Default.Columns(Series, Site.Latitude);

    /// <summary>The metrics by which a season is judged: those of the last years where it and all that it looks back on lie in them, which is the same and takes less.</summary>
    public SiteMetrics For(Season season) => recent is not null && season.Span.First.AddDays(-LooksBackDays) >= recent.Series.FirstDay ? recent : this;

    /// <summary>The metrics of the last years where these hold so many days, else these.</summary>
    public SiteMetrics OfLast(int days) => recent is not null && recent.Series.Count >= days ? recent : this;

    /// <summary>The metrics of weather as it is known on the day that is judged.</summary>
    /// <param name="weather">The weather; days after that day must not be in it.</param>
    /// <param name="site">The site.</param>
    /// <param name="journal">What was recorded there by that day.</param>
    /// <param name="watered">The days on which the lawn was watered deeply, as recorded.</param>
    /// <param name="memory">What was worked out of the site's past when it was judged before; null where it is judged once.</param>
    public static SiteMetrics Of(KnownWeather weather, Site site, SiteJournal journal, IReadOnlyList<DateOnly> watered, SiteMemory? memory = null)
    {
        ArgumentNullException.ThrowIfNull(weather);
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(journal);
        ArgumentNullException.ThrowIfNull(watered);
        return new SiteMetrics(weather, site, journal, weather.Forecast?.Days, watered, memory);
    }

    /// <summary>
    /// The metrics of one future: the last days known here and the days of that future after them. What is usual stays what it is here, from the whole record; and what the future brings is its own forecast.
    /// </summary>
    /// <param name="series">The days, from some time before the present on.</param>
    /// <param name="soil">The soil temperature on those days where it is estimated; null where it is measured, and so in the series.</param>
    internal SiteMetrics Ahead(DailySeries series, Func<Depth, SoilTemperatureColumns>? soil) => new(this, series, soil);

    /// <summary>The metrics of weather that nobody doubts, where nothing was recorded.</summary>
    public static SiteMetrics Of(DailySeries series, Site site) => Of(series, site, SiteJournal.Empty);

    /// <summary>The metrics of weather that nobody doubts: its holes are filled as of its last day.</summary>
    /// <param name="series">The weather; days after the one that is judged must not be in it.</param>
    /// <param name="site">The site.</param>
    /// <param name="journal">What was recorded there by the day that is judged.</param>
    /// <param name="forecast">The days after that one as they were forecast on it; null where there is no forecast.</param>
    /// <param name="watered">The days on which the lawn was watered deeply, as recorded.</param>
    public static SiteMetrics Of(DailySeries series, Site site, SiteJournal journal, DailySeries? forecast = null, IReadOnlyList<DateOnly>? watered = null)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(journal);
        return new SiteMetrics(KnownWeather.Undoubted(series), site, journal, forecast, watered ?? []);
    }

    /// <summary>The last day with both temperatures from the source, or null where there is none.</summary>
    public DateOnly? WeatherThrough
    {
        get
        {
            if (whole is not null) return whole.WeatherThrough;
            for (int i = Series.Count - 1; i >= 0; i--)
            {
                if (Series.QualityAt(i) is { } mark && mark.IsReading()) return Series.DayAt(i);
            }

            return null;
        }
    }

    /// <summary>Whether the weather of a day rests on a value that was filled, forecast or doubted rather than read.</summary>
    public bool IsFilled(DateOnly day) => Series.Holds(day) && Series.QualityAt(Series.IndexOf(day)) is { } mark && !mark.IsReading();

    /// <summary>Daily mean soil temperature and deviation at a depth [°C].</summary>
    public SoilTemperatureColumns Soil(Depth depth)
    {
        if (soil.TryGetValue(depth, out SoilTemperatureColumns? known)) return known;
        SoilTemperatureColumns columns = soilAhead is not null
            ? soilAhead(depth)
            : SoilIsMeasured
            ? MeasuredSoil.At(Series, depth)
            : ProbeCorrection.Correct(Layers.At, Series, depth, Journal.Readings()).Columns;
        soil.Add(depth, columns);
        return columns;
    }

    /// <summary>Mean soil temperature over the days that end on a day [°C]; NaN where one of them is not known.</summary>
    public double SoilMeanAt(Depth depth, int days, DateOnly day) => At(SoilMeans(depth, days), day);

    /// <summary>Mean soil temperature over the days that end on each day of the series [°C]; NaN where one of them is not known.</summary>
    public double[] SoilMeans(Depth depth, int days)
    {
        if (soilMeans.TryGetValue((depth, days), out double[]? means)) return means;
        means = RunningMean.Over(Soil(depth).MeanC, days);
        soilMeans.Add((depth, days), means);
        return means;
    }

    /// <summary>Standard deviation of the day's soil temperature [°C].</summary>
    public double SoilDeviationAt(Depth depth, DateOnly day) => At(Soil(depth).DeviationC, day);

    /// <summary>A heat sum at the end of a day [°C-days]; NaN where it is not known.</summary>
    public double HeatSumAt(HeatSumDefinition definition, DateOnly day) => At(HeatSumColumn(definition), day);

    /// <summary>A heat sum at the end of each day [°C-days].</summary>
    public double[] HeatSumColumn(HeatSumDefinition definition) => HeatSumsOf(definition).CelsiusDays;

    /// <summary>The year of a heat sum in which a day lies; null before its first start date.</summary>
    public HeatSumSeason? HeatSumSeasonOf(HeatSumDefinition definition, DateOnly day) => HeatSumsOf(definition).SeasonOf(day);

    /// <summary>An air temperature averaged over the days that end on each day of the series [°C]; NaN where one of them is not known.</summary>
    public double[] AirMeans(AirValue value, int days) => turf.AirMeans(value, days);

    /// <summary>The growth potential of a turf averaged over the days that end on each day of the series, 0 to 1; NaN where one of them is not known.</summary>
    public double[] GrowthMeans(TurfType grass, int days) => turf.GrowthMeans(grass, days);

    /// <summary>The rain over the days that end on each day of the series [mm]; NaN where one of them is not known.</summary>
    public double[] RainSums(int days) => turf.RainSums(days);

    /// <summary>Reference evapotranspiration of each day [mm]; NaN where a temperature is not known.</summary>
    public double[] ReferenceEvapotranspirationMm => turf.ReferenceEvapotranspirationMm;

    /// <summary>The water missing from the root zone at the end of each day [mm]; NaN where it is not known.</summary>
    public double[] RootZoneDepletionMm(TurfType grass) => turf.DepletionMm(grass);

    /// <summary>What may be missing from the root zone before the turf suffers, on each day [mm]; NaN where it is not known.</summary>
    public double[] RootZoneAllowedMm(TurfType grass) => turf.AllowedMm(grass);

    /// <summary>The water missing from the root zone at the end of a day, and what may be missing before the turf suffers [mm]; NaN where it is not known.</summary>
    public (double DepletionMm, double AllowedMm) RootZoneAt(TurfType grass, DateOnly day) => turf.RootZoneAt(grass, day);

    /// <summary>An air temperature forecast for a day [°C]; NaN where there is none.</summary>
    public double ForecastAirAt(AirValue value, DateOnly day)
    {
        if (Forecast is null || !Forecast.Holds(day)) return double.NaN;
        int index = Forecast.IndexOf(day);
        return TurfColumns.Air(value, Forecast.MinimumAirC[index], Forecast.MaximumAirC[index]);
    }

    /// <summary>The rain forecast for a day [mm]; NaN where there is none.</summary>
    public double ForecastRainAt(DateOnly day) => Forecast is not null && Forecast.Holds(day) && Forecast.Has(WeatherVariable.PrecipitationMm)
        ? Forecast.Column(WeatherVariable.PrecipitationMm)[Forecast.IndexOf(day)]
        : double.NaN;

    /// <summary>
    /// The last three full years and what there is of this one; null where there is not much more than that, and where a soil thermometer was read, since each reading counts ever after. They begin so many
    /// days after the first one that the running means, summed afresh at fixed places (<see cref="RunningMean"/>), are the same to the last bit.
    /// </summary>
    private SiteMetrics? RecentFrom(SiteMemory memory)
    {
        if (Journal.Entries.Any(entry => entry is SoilReading)) return null;
        int days = new DateOnly(Math.Max(1, Series.LastDay.Year - RecentYears), 1, 1).DayNumber - Series.FirstDay.DayNumber;
        int steps = days / RunningMean.StepsBetweenFreshSums;
        return steps <= 0 ? null : new SiteMetrics(this, Series.FirstDay.AddDays(steps * RunningMean.StepsBetweenFreshSums), memory);
    }

    private HeatSums HeatSumsOf(HeatSumDefinition definition)
    {
        ArgumentNullException.ThrowIfNull(definition);
        // A handful of definitions, asked for on every day of every season: the same one is found without comparing all that it says.
        foreach ((HeatSumDefinition known, HeatSums column) in heatSums)
        {
            if (ReferenceEquals(known, definition)) return column;
        }

        return MakeHeatSums(definition);
    }

    /// <summary>The sums of a definition that was not asked for yet; apart from the asking, which would otherwise allocate on every day.</summary>
    private HeatSums MakeHeatSums(HeatSumDefinition definition)
    {
        HeatSums sums = heatSums.Find(each => each.Definition == definition).Sums
            ?? (definition.SoilDepth is { } depth ? SoilHeatSum(definition, depth) : HeatSum.Over(Series, definition, Site.Hemisphere, []));
        heatSums.Add((definition, sums));
        return sums;
    }

    /// <summary>
    /// A soil's heat sum. Where the sum starts in the first days of the record, while the soil model is still warming up, those days are reckoned to be as warm
    /// as its first estimate; the sum is given from that estimate's day on and not before.
    /// </summary>
    private HeatSums SoilHeatSum(HeatSumDefinition definition, Depth depth)
    {
        double[] means = Soil(depth).MeanC;
        int warmUp = 0;
        while (warmUp < means.Length && warmUp <= LongestWarmUpDays && double.IsNaN(means[warmUp])) warmUp++;
        if (warmUp == 0 || warmUp > LongestWarmUpDays || warmUp == means.Length) return HeatSum.Over(Series, definition, Site.Hemisphere, means);
        double[] warmed = [.. means];
        warmed.AsSpan(0, warmUp).Fill(means[warmUp]);
        HeatSums sums = HeatSum.Over(Series, definition, Site.Hemisphere, warmed);
        sums.CelsiusDays.AsSpan(0, warmUp).Fill(double.NaN);
        return sums;
    }

    /// <summary>How many days of a span were filled rather than measured [days].</summary>
    public int FilledDays(DateSpan span)
    {
        int filled = 0;
        int last = Math.Min(Series.Count - 1, Series.IndexOf(span.Last));
        for (int i = Math.Max(0, Series.IndexOf(span.First)); i <= last; i++)
        {
            if (Series.QualityAt(i) is { } mark && !mark.IsReading()) filled++;
        }

        return filled;
    }

    private double At(double[] column, DateOnly day)
    {
        int index = Series.IndexOf(day);
        return (uint)index < (uint)column.Length ? column[index] : double.NaN;
    }
}
