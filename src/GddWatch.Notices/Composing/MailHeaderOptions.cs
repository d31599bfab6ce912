namespace GddWatch.Notices.Composing;

/// <summary>What stands in the headers of every mail.</summary>
public sealed class MailHeaderOptions
{
    /// <summary>The address that mails come from.</summary>
    /// <value>There is no default: it must be given.</value>
    public string From { get; set; } = "";

    /// <summary>The name shown beside the address.</summary>
    /// <value>Empty by default: then the region's name is shown.</value>
    public string FromName { get; set; } = "";

    /// <summary>What mail programs sort these mails by (List-Id), such as "alder-reach.example.org".</summary>
    /// <value>Empty by default: then it is made of the region's name and the domain of <see cref="From"/>.</value>
    public string ListId { get; set; } = "";

    /// <summary>Everything that is wrong, a sentence each; empty where all is well.</summary>
    public IReadOnlyList<string> Validate()
    {
        List<string> wrong = [];
        if (!OneAddress.TryRead(From, out _))
        {
            wrong.Add($"The address that mails come from must be one mail address such as \"windows@example.org\"; found \"{OneLine.Of(From)}\".");
        }
        if (ListId.Any(each => !char.IsAsciiLetterOrDigit(each) && each is not ('.' or '-' or '_')))
        {
            wrong.Add($"The list id may hold letters, digits, dots, hyphens and underscores, such as \"alder-reach.example.org\"; found \"{OneLine.Of(ListId)}\".");
        }
        return wrong;
    }
}
