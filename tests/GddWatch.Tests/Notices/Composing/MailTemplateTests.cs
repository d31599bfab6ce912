using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Composing;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>Templates that people edited: what is wrong is told with file, line and what to do, when the service starts.</summary>
public sealed class MailTemplateTests
{
    private const string Html = "notices.html.liquid";

    [Fact]
    public void Every_missing_template_is_told()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        File.Delete(folder.PathOf("notices.txt.liquid"));
        File.Delete(folder.PathOf("operator.subject.liquid"));

        MailComposer composer = Composers.Make(folder.Path);

        Assert.Equal([folder.PathOf("notices.txt.liquid"), folder.PathOf("operator.subject.liquid")], composer.Faults.Select(fault => fault.File));
        Assert.All(composer.Faults, fault => Assert.Contains("missing", fault.Problem, StringComparison.Ordinal));
        Assert.All(composer.Faults, fault => Assert.NotEmpty(fault.Advice));
    }

    [Fact]
    public void A_missing_folder_gives_a_fault_for_each_template_and_no_exception() =>
        Assert.Equal(9, Composers.Make(Path.Combine(Path.GetTempPath(), "gddwatch-no-such-folder")).Faults.Count);

    [Theory]
    [InlineData("one\ntwo\n{% if mail.count > 1 %}\nfour", 4, "endif")]
    [InlineData("one\n{{ mail.region \nthree", 2, "}}")]
    [InlineData("one\n{{ mail.regoin }}", 2, "regoin")]
    [InlineData("one\ntwo {{ mail.region }}\n{{ mial.region }}", 3, "mial")]
    [InlineData("one\n\n{% for notice in mail.notices %}\n{{ notice.headlin }}{% endfor %}", 4, "headlin")]
    [InlineData("{{ mail.region | shout }}", 1, "shout")]
    [InlineData("one\n{{ mail.region | raw }}", 2, "raw")]
    [InlineData("one\n{% include 'secrets' %}", 2, "include")]
    [InlineData("one\n{% render 'secrets' %}", 2, "render")]
    [InlineData("one\n{% for i in (1..2000000000) %}x{% endfor %}", 2, "range")]
    public void A_fault_is_told_with_its_line_and_what_was_found(string template, int line, string found)
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write(Html, template);

        MailTemplateFault fault = Assert.Single(Composers.Make(folder.Path).Faults);

        Assert.Equal(folder.PathOf(Html), fault.File);
        Assert.Equal(line, fault.Line);
        Assert.Contains(found, fault.Problem, StringComparison.Ordinal);
        Assert.StartsWith($"{fault.File}, line {line}: ", fault.ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(fault.Advice);
    }

    [Fact]
    public void Faults_of_several_templates_come_together()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write(Html, "{{ mail.regoin }}");
        folder.Write("operator.txt.liquid", "{% if %}");

        Assert.Equal(2, Composers.Make(folder.Path).Faults.Count);
    }

    [Fact]
    public void A_template_that_is_not_utf_8_is_told()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        File.WriteAllBytes(folder.PathOf(Html), [0x41, 0xFF, 0xFE]);

        Assert.Contains("not UTF-8", Assert.Single(Composers.Make(folder.Path).Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_template_that_never_ends_is_stopped()
    {
        const string inner = "{% for a in mail.notices %}";
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write(Html, $"{string.Concat(Enumerable.Repeat(inner, 12))}x{string.Concat(Enumerable.Repeat("{% endfor %}", 12))}");

        Assert.NotEmpty(Composers.Make(folder.Path).Faults);
    }

    [Fact]
    public void A_text_that_doubles_itself_is_stopped()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write(Html, $"{{% assign s = mail.region %}}{string.Concat(Enumerable.Repeat("{% assign s = s | append: s %}", 40))}{{{{ s }}}}");

        Assert.Contains("grew beyond", Assert.Single(Composers.Make(folder.Path).Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_text_that_is_worked_through_again_and_again_is_stopped()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        string loops = string.Concat(Enumerable.Repeat("{% for a in mail.notices %}", 6));
        folder.Write("notices.txt.liquid", $"{{% assign s = 'x' %}}{string.Concat(Enumerable.Repeat("{% assign s = s | append: s %}", 16))}{loops}{{% assign t = s | upcase %}}{string.Concat(Enumerable.Repeat("{% endfor %}", 6))}");

        Assert.Contains("million characters", Assert.Single(Composers.Make(folder.Path).Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{{ 'file:///etc/passwd' }}", "file:///etc/passwd")]
    [InlineData("{{ mail.get_type }}", null)]
    [InlineData("{{ mail.region.length }}", null)]
    [InlineData("{% layout 'secrets' %}", null)]
    [InlineData("{% include '../../etc/passwd' %}", null)]
    [InlineData("{% render '/etc/passwd' %}", null)]
    [InlineData("{{ 'passwd' | file_url }}", null)]
    public void A_template_reaches_no_file_and_nothing_of_the_program(string template, string? shown)
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write("operator.txt.liquid", template);
        MailComposer composer = Composers.Make(folder.Path);

        if (shown is null) Assert.NotEmpty(composer.Faults);
        else Assert.Equal(shown, composer.Compose(SampleMessages.ForOperator, SampleMessages.QueuedAt).TextBody!.Trim());
    }

    [Fact]
    public void A_list_written_out_whole_is_encoded_as_well()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write(Html, "{% for notice in mail.notices %}{% if notice.do.size > 0 %}{{ notice.do }}{{ notice }}{% endif %}{% case notice.kind %}{% when 'opened' %}{{ notice.do }}{% else %}{{ notice.do }}{% endcase %}{% unless notice.found_so %}{{ notice.do }}{% else %}{{ notice.do }}{% endunless %}{% else %}{{ mail.words }}{% endfor %}");
        Notice hostile = SampleMessages.PreEmergent with { Do = ["<b>one</b>", "two"], Headline = "<b>three</b>" };

        string html = Composers.Make(folder.Path).Compose(SampleMessages.One with { Notices = [hostile] }, SampleMessages.QueuedAt).HtmlBody!;

        Assert.Contains("&lt;b&gt;one&lt;/b&gt;, two", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Composing_with_a_faulty_template_throws_the_fault_and_leaves_the_other_kind_of_mail_alone()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write("operator.txt.liquid", "{% if %}");
        MailComposer composer = Composers.Make(folder.Path);

        MailTemplateException e = Assert.Throws<MailTemplateException>(() => composer.Compose(SampleMessages.ForOperator, SampleMessages.QueuedAt));

        Assert.Equal(folder.PathOf("operator.txt.liquid"), e.Fault.File);
        Assert.NotNull(composer.Compose(SampleMessages.One, SampleMessages.QueuedAt).HtmlBody);
    }

    [Fact]
    public void An_edited_template_is_used()
    {
        using TemplatesFolder folder = TemplatesFolder.Copy();
        folder.Write("notices.subject.liquid", "{{ mail.region }}:\n  {{ mail.notices.first.treatment | upcase }}");

        Assert.Equal("Alder Reach: SPRING PRE-EMERGENT", Composers.Make(folder.Path).Compose(SampleMessages.One, SampleMessages.QueuedAt).Subject);
    }
}
