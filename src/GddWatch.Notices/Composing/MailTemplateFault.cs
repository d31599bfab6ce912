namespace GddWatch.Notices.Composing;

/// <summary>Something wrong in a mail template that a person edited, said so that it can be put right.</summary>
/// <param name="File">The template's file.</param>
/// <param name="Line">The line, from 1; null where the whole file is meant or the place is not known.</param>
/// <param name="Problem">What is wrong, in a sentence.</param>
/// <param name="Advice">What to do, in a sentence.</param>
public sealed record MailTemplateFault(string File, int? Line, string Problem, string Advice)
{
    /// <summary>The fault as people read it: "file, line 3: the problem What to do."</summary>
    public override string ToString() => Line is { } line ? $"{File}, line {line}: {Problem} {Advice}" : $"{File}: {Problem} {Advice}";
}
