using System.Security.Cryptography;
using System.Text;
using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Changes;

/// <summary>Puts the notices of one pass into messages, one for each person and notice, or one for each person who wants them together.</summary>
public static class MessagePlan
{
    private const int LongestReadablePart = 120;

    /// <summary>The messages of one pass.</summary>
    public static IReadOnlyList<Message> For(IReadOnlyList<PlannedNotice> planned, Region region, DateOnly day)
    {
        var messages = new List<Message>();
        foreach (Recipient recipient in region.Recipients)
        {
            Notice[] notices = [.. planned.Where(each => each.Recipients.Contains(recipient)).Select(each => each.Notice)];
            if (notices.Length == 0) continue;
            IEnumerable<Notice[]> groups = recipient.Together ? [notices] : notices.Select(notice => new[] { notice });
            messages.AddRange(groups.Select(group => new Message
            {
                MessageId = IdOf(group, recipient.Address, region.OperatorAddress),
                Address = recipient.Address,
                AddresseeName = recipient.Name,
                Region = region.Name,
                Remark = region.Remark,
                OperatorAddress = region.OperatorAddress,
                Day = day,
                Notices = group,
            }));
        }

        return messages;
    }

    /// <summary>Word to the operator about the service itself.</summary>
    public static Message ToOperator(IReadOnlyList<string> words, Region region, DateOnly day) => new()
    {
        MessageId = Id($"{day:yyyy-MM-dd}.service", [region.OperatorAddress, .. words], region.OperatorAddress),
        Address = region.OperatorAddress,
        Region = region.Name,
        Remark = region.Remark,
        OperatorAddress = region.OperatorAddress,
        Day = day,
        Notices = [],
        OperatorWords = words,
    };

    /// <summary>The weekly overview for one person.</summary>
    public static Message BulletinFor(Recipient recipient, Bulletin bulletin, Region region, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(recipient);
        ArgumentNullException.ThrowIfNull(region);
        return new Message
        {
            MessageId = Id($"{day:yyyy-MM-dd}.bulletin", [region.Name, recipient.Address, $"{day:yyyy-MM-dd}"], region.OperatorAddress),
            Address = recipient.Address,
            AddresseeName = recipient.Name,
            Region = region.Name,
            Remark = region.Remark,
            OperatorAddress = region.OperatorAddress,
            Day = day,
            Notices = [],
            Bulletin = bulletin,
        };
    }

    private static string IdOf(Notice[] notices, string address, string operatorAddress)
    {
        NoticeKey first = notices[0].Key;
        string what = notices.Length == 1
            ? $"{NoticeKinds.Word(first.Kind)}.{first.Treatment}.{first.Site}"
            : $"{notices.Length}-notices";
        DateOnly since = notices.Max(notice => notice.Since);
        return Id($"{since:yyyy-MM-dd}.{what}", [address, .. notices.Select(notice => notice.Key.ToString()).Order(StringComparer.Ordinal)], operatorAddress);
    }

    /// <summary>Readable in front, made unmistakable by a hash of all that makes the message this one.</summary>
    private static string Id(string readable, IReadOnlyList<string> makers, string operatorAddress)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', makers)));
        string front = readable.Length <= LongestReadablePart ? readable : readable[..LongestReadablePart];
        string domain = operatorAddress[(operatorAddress.LastIndexOf('@') + 1)..];
        return $"{front}.{Convert.ToHexStringLower(hash.AsSpan(0, 8))}@{domain}";
    }
}
