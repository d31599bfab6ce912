using GddWatch.Configuration.Yaml;
using MimeKit;

namespace GddWatch.Configuration.Reading;

/// <summary>Checks mail addresses: what gets past here goes into the head of a mail.</summary>
public static class MailAddress
{
    /// <summary>What is accepted.</summary>
    public const string Accepted = "an address such as adviser@example.org: a name, one @, and a domain with a dot, without blanks";

    /// <summary>Faults an address that no mail could reach.</summary>
    public static void Check(Placed<string> address, FaultList faults)
    {
        if (!IsPlausible(address.Place.Text ?? "")) faults.Add(address.Place, "This is not a mail address.", Accepted);
    }

    /// <summary>Whether a text is a bare mail address with a dotted domain.</summary>
    public static bool IsPlausible(string text)
    {
        if (text.Length is 0 or > 254 || text.Count(each => each == '@') != 1 || text.Any(each => char.IsControl(each) || char.IsWhiteSpace(each))) return false;
        string domain = text[(text.IndexOf('@') + 1)..];
        bool dotted = domain.Contains('.') && !domain.StartsWith('.') && !domain.EndsWith('.') && !domain.Contains("..");
        bool plain = domain.All(each => char.IsLetterOrDigit(each) || each is '.' or '-');
        return dotted && plain && MailboxAddress.TryParse(text, out MailboxAddress? parsed) && parsed.Address == text && string.IsNullOrEmpty(parsed.Name);
    }
}
