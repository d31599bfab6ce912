namespace GddWatch.Notices.Composing;

/// <summary>A mail could not be composed because a template is faulty. The message is the fault as people read it.</summary>
public sealed class MailTemplateException : Exception
{
    /// <summary>Makes it from the fault that was met.</summary>
    public MailTemplateException(MailTemplateFault fault)
        : base(fault?.ToString())
    {
        ArgumentNullException.ThrowIfNull(fault);
        Fault = fault;
    }

    /// <summary>What is wrong, where, and what to do.</summary>
    public MailTemplateFault Fault { get; }
}
