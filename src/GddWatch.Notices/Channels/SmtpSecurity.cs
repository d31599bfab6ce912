namespace GddWatch.Notices.Channels;

/// <summary>How the line to a mail server is kept private.</summary>
public enum SmtpSecurity
{
    /// <summary>Begins in the clear and turns to TLS before anything is said; without TLS nothing is sent. Usual on port 587.</summary>
    StartTls,

    /// <summary>TLS from the first byte. Usual on port 465.</summary>
    ImplicitTls,

    /// <summary>Not private; accepted only for a server on this machine.</summary>
    None,
}
