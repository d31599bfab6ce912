namespace GddWatch.Feeds.Services.Fetching;

/// <summary>Who asks, as the services' terms want to know it: the User-Agent.</summary>
/// <param name="Contact">The operator's mail address.</param>
/// <param name="Version">The version of the program.</param>
public sealed record ServiceClient(string Contact, string Version)
{
    /// <summary>The User-Agent. What would end its comment or its line is left out of the contact.</summary>
    public string UserAgent => $"GddWatch/{Version} ({string.Concat(Contact.Where(each => each is > ' ' and <= '~' and not ('(' or ')' or '\\')))})";
}
