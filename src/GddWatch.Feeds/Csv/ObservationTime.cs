namespace GddWatch.Feeds.Csv;

/// <summary>When a station's day is read.</summary>
public enum ObservationTime
{
    /// <summary>At the end of the calendar day.</summary>
    Midnight,

    /// <summary>In the morning: the maximum read then belongs to the day before.</summary>
    Morning,
}
