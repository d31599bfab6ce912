using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>Puts the rows of <c>daily_value</c> together into series, millions of them: in the order of site, feed, day, variable and the instant at which a value was first seen.</summary>
internal sealed class KeptDays
{
    private readonly Dictionary<(string Site, string Feed), DailySeries> series = [];
    private readonly Dictionary<string, WeatherVariable> variables = new(StringComparer.Ordinal);
    private DailySeriesBuilder builder = new();
    private string site = "", feed = "", dayText = "", variable = "";
    private DateOnly day;

    /// <summary>Adds a row.</summary>
    /// <param name="ofSite">The site's id.</param>
    /// <param name="ofFeed">The feed.</param>
    /// <param name="ofDay">The day as it is stored.</param>
    /// <param name="ofVariable">The variable's word.</param>
    /// <param name="value">The value.</param>
    /// <param name="stands">Whether no other value has taken its place.</param>
    public void Add(string ofSite, string ofFeed, string ofDay, string ofVariable, double value, bool stands)
    {
        if (ofSite != site || ofFeed != feed)
        {
            Finish();
            (site, feed, dayText) = (ofSite, ofFeed, "");
        }

        // Values of one variable on one day come in the order in which they were seen: the last one stands.
        bool isCorrected = ofDay == dayText && ofVariable == variable;
        if (ofDay != dayText) day = StoredText.Day(dayText = ofDay);
        variable = ofVariable;
        if (!stands) return;
        if (!variables.TryGetValue(ofVariable, out WeatherVariable known)) variables.Add(ofVariable, known = DailyValueRow.VariableOf(ofVariable));
        builder.Put(day, known, value, isCorrected ? Mark.Corrected : Mark.Measured);
    }

    /// <summary>The series by site and feed.</summary>
    public IReadOnlyDictionary<(string Site, string Feed), DailySeries> Build()
    {
        Finish();
        return series;
    }

    private void Finish()
    {
        if (builder.Build() is { } whole) series.Add((site, feed), whole);
        builder = new DailySeriesBuilder();
    }
}
