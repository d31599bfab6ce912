namespace GddWatch.Feeds.Archives;

/// <summary>Where an archive says that a station stands.</summary>
/// <param name="Latitude">Latitude [°], north positive.</param>
/// <param name="Longitude">Longitude [°], east positive.</param>
/// <param name="ElevationM">Height above the sea [m]; null where the archive does not tell.</param>
public readonly record struct StationPosition(double Latitude, double Longitude, double? ElevationM)
{
    private const double EarthRadiusKm = 6371.0088;

    /// <summary>Whether the numbers are a place on earth; archives write codes such as -9999 and -999.9 for what they do not know.</summary>
    public bool IsKnown => Math.Abs(Latitude) <= 90 && Math.Abs(Longitude) <= 180;

    /// <summary>The distance along the ground [km], by the haversine formula on a sphere.</summary>
    public double KilometresTo(double latitude, double longitude)
    {
        double north = Sine2(latitude - Latitude);
        double east = Sine2(longitude - Longitude);
        double half = north + (Math.Cos(Radians(Latitude)) * Math.Cos(Radians(latitude)) * east);
        return 2 * EarthRadiusKm * Math.Asin(Math.Min(1, Math.Sqrt(half)));
    }

    private static double Sine2(double degrees) => Math.Pow(Math.Sin(Radians(degrees) / 2), 2);

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
