using System.Text;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using Fluid;

namespace GddWatch.Notices.Composing;

/// <summary>One template file, read and parsed once.</summary>
internal sealed partial class MailTemplate
{
    private const int LargestFileBytes = 256 * 1024;

    private readonly string file;
    private readonly string source;
    private readonly IFluidTemplate template;
    private readonly TemplateOptions options;
    private readonly TextEncoder encoder;

    private MailTemplate(string file, string source, IFluidTemplate template, TemplateOptions options, TextEncoder encoder)
    {
        this.file = file;
        this.source = source;
        this.template = template;
        this.options = options;
        this.encoder = encoder;
    }

    /// <summary>Reads and parses a file; null where there is a fault, which is added to the list.</summary>
    public static MailTemplate? Read(string file, bool html, FluidParser parser, TemplateOptions options, List<MailTemplateFault> faults)
    {
        if (ReadText(file, faults) is not { } source) return null;
        if (!parser.TryParse(source, out IFluidTemplate parsed, out string error))
        {
            faults.Add(ParseFault(file, error));
            return null;
        }
        IFluidTemplate guarded = TemplateRules.Guarded(parsed, out bool countsThroughRange);
        if (countsThroughRange)
        {
            faults.Add(new(file, LineOf(source, ".."), "A range such as (1..3) is not accepted in a mail template.", "Loop over a list, such as mail.notices."));
            return null;
        }
        return new(file, source, guarded, options, html ? HtmlEncoder.Default : NullEncoder.Default);
    }

    /// <summary>The template filled in.</summary>
    /// <exception cref="MailTemplateException">The template uses what is not there, or does too much.</exception>
    public string Render(MailView mail)
    {
        var context = new TemplateContext(options);
        context.SetValue("mail", mail);
        try
        {
            return template.Render(context, encoder);
        }
        // The engine throws what its filters throw; whatever it is, the template is at fault and a person can mend it.
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            throw new MailTemplateException(RenderFault(e.Message));
        }
    }

    private static string? ReadText(string file, List<MailTemplateFault> faults)
    {
        const string restore = "Put the template back from the sample configuration, or correct the folder's path.";
        try
        {
            if (!File.Exists(file))
            {
                faults.Add(new(file, null, "The mail template is missing.", restore));
                return null;
            }
            if (new FileInfo(file).Length > LargestFileBytes)
            {
                faults.Add(new(file, null, $"The mail template is larger than {LargestFileBytes / 1024} kB.", "Shorten it; mail programs cut long mails."));
                return null;
            }
            return File.ReadAllText(file, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
        }
        catch (DecoderFallbackException)
        {
            faults.Add(new(file, null, "The mail template is not UTF-8 text.", "Save it again with the encoding UTF-8."));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(new(file, null, $"The mail template cannot be read: {e.Message}", "Check that the file may be read by the account that runs the service."));
        }
        return null;
    }

    private static MailTemplateFault ParseFault(string file, string error)
    {
        Match place = Place().Match(error);
        int? line = place.Success ? int.Parse(place.Groups["line"].ValueSpan) : null;
        string problem = OneLine.Of(place.Success ? error[..place.Index] : error).TrimEnd('.');
        string advice = problem.StartsWith("Unknown tag", StringComparison.Ordinal)
            ? $"Accepted tags: {string.Join(", ", TemplateRules.Tags.Order(StringComparer.Ordinal))}."
            : "Correct the line, or put the template back from the sample configuration.";
        return new(file, line, $"{problem}.", advice);
    }

    private MailTemplateFault RenderFault(string error)
    {
        string problem = OneLine.Of(error).TrimEnd('.');
        Match name = Quoted().Match(problem);
        int? line = name.Success ? LineOf(source, name.Groups["name"].Value) : null;
        string advice = problem switch
        {
            _ when problem.StartsWith("Undefined variable", StringComparison.Ordinal) =>
                "Use a name that the templates of the sample configuration use; a misspelt one would leave a hole in the mail.",
            _ when problem.StartsWith("Undefined filter", StringComparison.Ordinal) =>
                $"Accepted filters: {string.Join(", ", TemplateRules.Filters.Order(StringComparer.Ordinal))}.",
            _ => "Simplify the template, or put it back from the sample configuration.",
        };
        return new(file, line, $"{problem}.", advice);
    }

    private static int? LineOf(string source, string text)
    {
        int at = -1;
        do
        {
            at = source.IndexOf(text, at + 1, StringComparison.Ordinal);
        }
        while (at >= 0 && IsPartOfWord(source, at, text.Length));
        return at < 0 ? null : source.AsSpan(0, at).Count('\n') + 1;
    }

    private static bool IsPartOfWord(string source, int at, int length) =>
        (at > 0 && IsWord(source[at - 1]) && IsWord(source[at])) || (at + length < source.Length && IsWord(source[at + length]) && IsWord(source[at + length - 1]));

    private static bool IsWord(char each) => char.IsAsciiLetterOrDigit(each) || each == '_';

    [GeneratedRegex(@"\s+at \((?<line>\d+):\d+\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();

    [GeneratedRegex("'(?<name>[^']+)'", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Quoted();
}
