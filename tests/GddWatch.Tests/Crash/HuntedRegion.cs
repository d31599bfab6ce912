using System.Globalization;
using System.Text;
using GddWatch.Tests.Commands;

namespace GddWatch.Tests.Crash;

/// <summary>An invented region in which something opens, is past its best and closes on every day, at two lawns, told to three people: several mails a day.</summary>
internal static class HuntedRegion
{
    /// <summary>The first day that is lived through.</summary>
    public static readonly DateOnly FirstDay = new(2025, 4, 1);

    /// <summary>A workshop with that region for so many days, its mails going to a server of this machine.</summary>
    public static Workshop Make(int days, int mailPort)
    {
        var workshop = new Workshop();
        File.WriteAllText(Path.Combine(workshop.Config, "region.yaml"), """
            region: { name: Hunted Region, time-zone: America/Chicago, units: us }
            sites:
              - { id: near, name: The Near Lawn, latitude: 41.6, longitude: -93.3, elevation: 250 m, turf: [cool-season], feeds: [ { csv: near.csv, columns: { date: date, minimum: tmin, maximum: tmax, precipitation: rain }, units: { temperature: °C, precipitation: mm } } ] }
              - { id: far, name: The Far Lawn, latitude: 40.1, longitude: -93.3, elevation: 250 m, turf: [cool-season], feeds: [ { csv: far.csv, columns: { date: date, minimum: tmin, maximum: tmax, precipitation: rain }, units: { temperature: °C, precipitation: mm } } ] }
            recipients:
              - { address: one@example.org, sites: all, treatments: all }
              - { address: two@example.org, sites: [near], treatments: all }
              - { address: three@example.org, sites: all, treatments: all, notices: [opened, closing, closed, corrected, bulletin], together: true }
            operator: { address: operator@example.org }

            """);
        File.WriteAllText(Path.Combine(workshop.Config, "treatments.yaml"), Treatments(days));
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""
            { "Mail": { "Host": "127.0.0.1", "Port": "{{mailPort}}", "Security": "none", "From": "service@example.org" } }
            """);
        File.WriteAllText(Path.Combine(workshop.Folder, "near.csv"), SmoothWeather.Csv(new DateOnly(2024, 12, 1), FirstDay.AddDays(days)));
        File.WriteAllText(Path.Combine(workshop.Folder, "far.csv"), SmoothWeather.Csv(new DateOnly(2024, 12, 1), FirstDay.AddDays(days), _ => -0.7));
        return workshop;
    }

    /// <summary>Noon of a day at the lawns, give or take an hour, and so many times half an hour later: a claim has run out by then.</summary>
    public static DateTimeOffset At(DateOnly day, int attempt) => new DateTimeOffset(day.ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero).AddMinutes(31 * attempt);

    private static string Treatments(int days)
    {
        var yaml = new StringBuilder("cautions:\n  label: The label is the law.\ntreatments:\n");
        double sum = 0;
        for (DateOnly day = new(2025, 1, 1); day < FirstDay.AddDays(days); day = day.AddDays(1))
        {
            // The climate of the near lawn: the sum that it has on this day opens a task's window there on it.
            sum += Math.Max(0, 11 + 13 * Math.Sin(2 * Math.PI * (day.DayOfYear - 105) / 365));
            if (day < FirstDay.AddDays(-2)) continue;
            yaml.Append(string.Create(CultureInfo.InvariantCulture, $$"""
                  - id: task-{{day:MM-dd}}
                    name: Task of {{day:d MMMM}}
                    turf: [cool-season]
                    season: { from: 01-01, until: 12-01 }
                    opens:
                      heat-sum: { reaches: {{sum:0}} °C-days, base: 0 °C, method: simple average, from: 01-01 }
                    closing:
                      heat-sum: { reaches: {{sum + 30:0}} °C-days, base: 0 °C, method: simple average, from: 01-01 }
                    closed:
                      heat-sum: { reaches: {{sum + 60:0}} °C-days, base: 0 °C, method: simple average, from: 01-01 }
                    cautions: [label]

                """));
        }

        return yaml.ToString();
    }
}
