using Fluid;

namespace GddWatch.Notices.Composing;

/// <summary>The three templates of one kind of mail.</summary>
/// <param name="Subject">The subject line.</param>
/// <param name="Text">The plain text part.</param>
/// <param name="Html">The HTML part.</param>
internal sealed record MailTemplateSet(MailTemplate Subject, MailTemplate Text, MailTemplate Html)
{
    /// <summary>Reads NAME.subject.liquid, NAME.txt.liquid and NAME.html.liquid; null where one is faulty.</summary>
    public static MailTemplateSet? Read(string folder, string name, FluidParser parser, TemplateOptions options, List<MailTemplateFault> faults)
    {
        MailTemplate? subject = MailTemplate.Read(Path.Combine(folder, $"{name}.subject.liquid"), html: false, parser, options, faults);
        MailTemplate? text = MailTemplate.Read(Path.Combine(folder, $"{name}.txt.liquid"), html: false, parser, options, faults);
        MailTemplate? html = MailTemplate.Read(Path.Combine(folder, $"{name}.html.liquid"), html: true, parser, options, faults);
        return subject is not null && text is not null && html is not null ? new(subject, text, html) : null;
    }

    /// <summary>Fills each template with each message and gathers the faults, each once.</summary>
    public void Try(IEnumerable<MailView> mails, List<MailTemplateFault> faults)
    {
        foreach (MailView mail in mails)
        {
            foreach (MailTemplate template in (MailTemplate[])[Subject, Text, Html])
            {
                try
                {
                    template.Render(mail);
                }
                catch (MailTemplateException e) when (!faults.Contains(e.Fault))
                {
                    faults.Add(e.Fault);
                }
                catch (MailTemplateException)
                {
                    // Known already from another message.
                }
            }
        }
    }
}
