using GddWatch.Agronomy.Places;

namespace GddWatch.Watching;

/// <summary>When a mail is given up, when an address is paused, and when people want to be left in peace.</summary>
internal sealed class DeliveryRules
{
    /// <summary>So many different mails that an address refuses for good, one after the other, pause it.</summary>
    public const int PauseAfterRefusals = 3;

    private readonly Dictionary<string, (QuietHours Quiet, TimeZoneInfo Zone)> quiet = new(StringComparer.OrdinalIgnoreCase);
    private readonly string operatorAddress;

    /// <summary>The rules of a region.</summary>
    /// <param name="region">Its people.</param>
    /// <param name="giveUpAfter">After how long of trying a mail is given up.</param>
    public DeliveryRules(Region region, TimeSpan giveUpAfter)
    {
        GiveUpAfter = giveUpAfter;
        operatorAddress = region.OperatorAddress;
        foreach (Recipient recipient in region.Recipients)
        {
            if (recipient.Quiet is { } hours) quiet[recipient.Address] = (hours, TimeZoneInfo.FindSystemTimeZoneById(recipient.TimeZone ?? region.TimeZone));
        }
    }

    /// <summary>After how long of trying a mail is given up.</summary>
    public TimeSpan GiveUpAfter { get; }

    /// <summary>The instant from which mail may go to an address again, where it wants none at an instant; else null.</summary>
    public DateTimeOffset? QuietUntil(string address, DateTimeOffset at) => quiet.TryGetValue(address, out (QuietHours Quiet, TimeZoneInfo Zone) of) ? of.Quiet.EndAfter(at, of.Zone) : null;

    /// <summary>The instant itself, or the end of the quiet hours that it falls into.</summary>
    public DateTimeOffset NotInQuiet(string address, DateTimeOffset at) => QuietUntil(address, at) ?? at;

    /// <summary>After how many refusals an address is paused. The operator's never is: word about the service's own troubles is tried each time.</summary>
    public int PauseAfter(string address) => string.Equals(address, operatorAddress, StringComparison.OrdinalIgnoreCase) ? int.MaxValue : PauseAfterRefusals;
}
