using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// Daily mean soil temperature under turf by three layers of soil under grass and snow: the default model. It needs the air's extremes
/// alone, is better with precipitation, and is trained at no site.
/// <para>Surface. m = (Tn + Tx)/2, q = √(Tx − Tn). Sun that reaches the ground Rs = 0.16·q·Ra [MJ/m²] and demand for water
/// E = 0.0023·0.408·q·Ra·max(0, m + 17.8) [mm] (both after Hargreaves). Warming by sun and sky
/// F = Rs·(s0 + s2·d + s3·a·d + sR·Ra/40)/(1 + rS·S) − l0 − l1·q − l2·a [°C], with dryness d, aridity a, snow S. The surface strives for
/// Ts = m + F, in frost nA·m + F.</para>
/// <para>Water. A share clip((2 − m)/4, 0, 1) of precipitation p (at most 30 mm a day counts) falls as snow; melt = 5.2·max(0, m) mm at
/// most; wetness w = min(W, w·W + rain + melt)/(W + E), d = 1 − w; aridity a = E̅/(E̅ + p̅) of means over a year.</para>
/// <para>Heat, one implicit step a day: T1 = (c1·T1 + g′·Ts + h12′·T2)/(c1 + g′ + h12′), T2 = (c2·T2 + h2′·T1 + h23·T3)/(c2 + h2′ + h23),
/// T3 = T3 + h3·(T2 − T3); g′ = g/(1 + kS·S); h12′, h2′ times 1 + hD·d; capacity c = 1 + f/(1 + (T/0.6)²), in which water freezes. At
/// depth z: T1 + (1 − exp(−(z − 5)/30))·(T2 − T1).</para>
/// <para>Valid for 2 to 20 cm (measured against 5, 10 and 20 cm; nearer than 5 cm it extrapolates), under turf that rain waters. Irrigated
/// ground in a dry summer stays cooler than it says by some degrees (2.7 °C at an irrigated station in California, 15 cm): there, take
/// probe readings.</para>
/// <para>Missing input. Days before the first known one give NaN, and so do the first 13 known ones; the start-up error of the months
/// after is in the deviation. A missing minimum or maximum is replaced by the latitude's yearly wave plus the last departure from it, the
/// deviation grows; after 20 such days in a row the estimate is NaN until 14 days are known again. Values marked as filled in are taken as
/// missing, for they know nothing of the day. Unknown precipitation is judged by the daily range of the air; where the last month's was
/// all unknown and the daily range of the last months is above 13 °C the deviation is larger, up to 2.5-fold from 16 °C on. Measured snow depth, radiation and humidity are not used: the first could not be tested, the
/// others brought no gain at the stations below.</para>
/// <para>Sources: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, for Ra and both Hargreaves formulas (CALC against its
/// examples); the daily step with snow in the exchange follows the form of Lindström et al. 2002 (SEEN as code, paper MEMORY); heat of
/// freezing in the capacity and snow by degree-days are textbook (MEMORY); the composition is our own.</para>
/// <para>Constants, their data and their error: <see cref="LayeredTurfSoilCoefficients"/>. The deviation's ±1.28-fold holds 80 % of days
/// at humid stations left out of the fit (80 to 81 % in the year and both seasons), and at dry ones (80, 82 and 83 %). Without precipitation
/// it holds 81 % in the year, 80 % February to May and 84 % August to October at humid stations, 75, 70 and 86 % at dry ones: in their
/// springs it promises too much. The constants of the deviation were chosen so at these stations (<see cref="TurfSoilLayers"/>).</para>
/// </summary>
/// <param name="coefficients">The constants; null for the fitted ones.</param>
public sealed class LayeredTurfSoil(LayeredTurfSoilCoefficients? coefficients = null) : ISoilTemperatureModel
{
    /// <summary>Days with known air temperatures before an estimate is given [days].</summary>
    public const int KnownDaysNeeded = 14;

    /// <summary>How many missing days in a row are bridged [days].</summary>
    public const int LongestHoleDays = 20;

    private readonly LayeredTurfSoilCoefficients coefficients = coefficients ?? new LayeredTurfSoilCoefficients();

    /// <summary>The model with its fitted constants.</summary>
    public static LayeredTurfSoil Default { get; } = new();

    /// <inheritdoc/>
    public string Name => "Layered turf soil";

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles, the depth outside 2 to 20 cm; a day's minimum
    /// lies above its maximum; a temperature or precipitation is infinite, or precipitation negative.</exception>
    /// <exception cref="ArgumentException">A column has another length than the series.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        Span<LatitudeDay> year = stackalloc LatitudeDay[LatitudeDay.DaysOfTable];
        LatitudeDay.Fill(latitudeDegrees, year);
        var layers = new TurfSoilLayers(coefficients);
        var trust = new SoilTrust();
        Go(ref layers, ref trust, series, 0, year, TurfSoilLayers.ShareOfMiddle(depth.Centimetres), meanC, deviationC, []);
    }

    /// <summary>Estimates all depths at once.</summary>
    /// <param name="series">The weather.</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    internal TurfSoilColumns Columns(DailySeries series, double latitudeDegrees)
    {
        SoilDemand.Weather(series, latitudeDegrees);
        var year = new LatitudeDay[LatitudeDay.DaysOfTable];
        LatitudeDay.Fill(latitudeDegrees, year);
        return Columns(new TurfSoilStand(new TurfSoilLayers(coefficients), new SoilTrust(), year), series);
    }

    /// <summary>The same for a series that begins on the day after the soil stood so.</summary>
    internal static TurfSoilColumns Columns(TurfSoilStand before, DailySeries series)
    {
        TurfSoilLayers layers = before.Layers;
        SoilTrust trust = before.Trust;
        double[] shallow = new double[series.Count], middleLessShallow = new double[series.Count], deviations = new double[series.Count];
        Go(ref layers, ref trust, series, 0, before.Year, 0, shallow, deviations, middleLessShallow);
        return new TurfSoilColumns(shallow, middleLessShallow, deviations, before with { Layers = layers, Trust = trust });
    }

    /// <summary>Where the soil stands at the end of a series, from which it goes on into days to come.</summary>
    /// <param name="series">The weather.</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    internal TurfSoilStand StandAfter(DailySeries series, double latitudeDegrees)
    {
        var year = new LatitudeDay[LatitudeDay.DaysOfTable];
        LatitudeDay.Fill(latitudeDegrees, year);
        var layers = new TurfSoilLayers(coefficients);
        var trust = new SoilTrust();
        Go(ref layers, ref trust, series, 0, year, 0, [], [], []);
        return new TurfSoilStand(layers, trust, year);
    }

    /// <summary>Goes on from where the soil stands: fills the columns from a place on, from that day's weather on.</summary>
    internal static void GoOn(TurfSoilStand stand, DailySeries series, int from, Depth depth, double[] meanC, double[] deviationC)
    {
        TurfSoilLayers layers = stand.Layers;
        SoilTrust trust = stand.Trust;
        Go(ref layers, ref trust, series, from, stand.Year, TurfSoilLayers.ShareOfMiddle(depth.Centimetres), meanC, deviationC, []);
    }

    private static void Go(
        ref TurfSoilLayers layers, ref SoilTrust trust, DailySeries series, int from, ReadOnlySpan<LatitudeDay> year, double share, Span<double> meanC, Span<double> deviationC, Span<double> middleLessShallowC)
    {
        var air = new KnownAir(series);
        ReadOnlySpan<double> rain = series.Column(WeatherVariable.PrecipitationMm);
        var calendar = new DayOfYearCounter(series.DayAt(from));
        for (int i = from; i < series.Count; i++, calendar.Next())
        {
            bool known = air.At(i, out double minimum, out double maximum);
            trust.Next(known);
            if (trust.HasBegun) layers.Step(year[calendar.DayOfYear - 1], minimum, maximum, rain.IsEmpty ? double.NaN : rain[i]);
            if (meanC.IsEmpty) continue;
            meanC[i] = trust.Holds ? layers.At(share) : double.NaN;
            deviationC[i] = trust.Holds ? layers.DeviationC : double.NaN;
            if (!middleLessShallowC.IsEmpty) middleLessShallowC[i] = layers.MiddleC - layers.ShallowC;
        }
    }

    /// <summary>The air temperatures that the source knows: a filled or doubted day is missing here, a forecast one counts.</summary>
    private readonly ref struct KnownAir(DailySeries series)
    {
        private readonly ReadOnlySpan<double> minimumC = series.MinimumAirC;
        private readonly ReadOnlySpan<double> maximumC = series.MaximumAirC;
        private readonly ReadOnlySpan<Mark> minimumMarks = series.MinimumMarks;
        private readonly ReadOnlySpan<Mark> maximumMarks = series.MaximumMarks;

        public bool At(int index, out double minimum, out double maximum)
        {
            minimum = minimumC[index];
            maximum = maximumC[index];
            if (minimumMarks[index] is Mark.Filled or Mark.Suspect || maximumMarks[index] is Mark.Filled or Mark.Suspect) minimum = double.NaN;
            return !double.IsNaN(minimum + maximum);
        }
    }
}
