using System.Globalization;
using System.Net.Sockets;
using System.Text;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using GddWatch.Notices.Composing;

namespace GddWatch.Notices.Channels;

/// <summary>Says in plain words what a mail server answered or what went wrong on the way. No password is ever among them.</summary>
internal sealed class SmtpWords(SmtpOptions options)
{
    private const int LongestAnswer = 500;

    private readonly string server = $"The mail server {options.Host}:{options.Port}";

    /// <summary>A server's answer on one line, not too long, and without the password should the server echo it.</summary>
    public string Clean(string answer)
    {
        // The password as it is, and as a login puts it on the line (RFC 4616, RFC 4648).
        string[] secrets = options.Password.Length == 0 ? [] : [options.Password, Coded($"\0{options.User}\0{options.Password}"), Coded(options.Password)];
        string line = OneLine.Of(secrets.Aggregate(answer, (text, secret) => text.Replace(secret, "…", StringComparison.Ordinal)));
        return line.Length <= LongestAnswer ? line : $"{line[..LongestAnswer]}…";
    }

    /// <summary>Why there is no connection, and what to check.</summary>
    public string NotConnected(Exception e, string certificateTrouble) => e switch
    {
        SslHandshakeException when certificateTrouble.Length > 0 =>
            $"{server} was not trusted: {certificateTrouble}. Nothing was sent. " +
            "Check the server's name; for a private server of your own, compare this number with the certificate's own and pin it.",
        SslHandshakeException =>
            $"{server}: no secure line could be made ({Clean(e.Message.Split('\n')[0])}). Nothing was sent. " +
            "Check the port and whether the server wants STARTTLS or TLS from the start.",
        AuthenticationException =>
            $"{server} did not accept the login of \"{Clean(options.User)}\" ({Clean(e.Message)}). Check the user name and the password.",
        NotSupportedException when options.Security == SmtpSecurity.StartTls && e.Message.Contains("STARTTLS", StringComparison.Ordinal) =>
            $"{server} offers no STARTTLS, so neither a password nor a mail was sent. " +
            "Check the port, or whether the server wants TLS from the start (usual on port 465).",
        NotSupportedException =>
            $"{server} cannot do what is asked of it: {Clean(e.Message)} Check whether it wants a login at all.",
        SmtpCommandException refused => $"{server} does not let us in: {Answer(refused)}",
        SocketException or TimeoutException => $"{server} could not be reached: {Clean(e.Message).TrimEnd('.')}. " +
            "Check the server's name and port, and whether the network lets mail out.",
        _ =>
            $"{server} broke off while connecting: {Clean(e.Message)} Check the port, and whether the server wants STARTTLS or TLS from the start.",
    };

    /// <summary>What a refusal means for the mail.</summary>
    public DeliveryOutcome Refused(SmtpCommandException e)
    {
        bool isAboutThisMail = e.ErrorCode is SmtpErrorCode.RecipientNotAccepted or SmtpErrorCode.MessageNotAccepted;
        // A refused sender, or a refused command, is a matter of configuration and would be refused for everybody: the mail must outlive its correction.
        return isAboutThisMail && (int)e.StatusCode is >= 500 and < 600 && !WantsLogin(e.StatusCode)
            ? new DeliveryOutcome.RefusedForGood(Answer(e))
            : new DeliveryOutcome.RefusedForNow(e.ErrorCode == SmtpErrorCode.SenderNotAccepted ? $"The sender {options.From} was refused: {Answer(e)}" : Answer(e))
            {
                ConcernsAll = !isAboutThisMail || WantsLogin(e.StatusCode) || e.StatusCode == SmtpStatusCode.ServiceNotAvailable,
            };
    }

    public string WantsLogin(ServiceNotAuthenticatedException e) =>
        $"{server} wants a login ({Clean(e.Message)}). Give a user name and a password.";

    public string CannotTake(NotSupportedException e) => $"{server} cannot take this mail: {Clean(e.Message)} Check the address for letters beyond a to z.";

    /// <summary>How the line broke.</summary>
    public string Broken(Exception e) => e is OperationCanceledException
        ? $"{server} did not answer in time."
        : $"The line to {options.Host}:{options.Port} broke: {Clean(e.Message)}";

    private static string Coded(string text) => Convert.ToBase64String(Encoding.UTF8.GetBytes(text));

    private static bool WantsLogin(SmtpStatusCode code) => (int)code is 530 or 534 or 535 or 538;

    private string Answer(SmtpCommandException e) =>
        $"{((int)e.StatusCode).ToString(CultureInfo.InvariantCulture)} {Clean(e.Message)}{(e.Mailbox is { } mailbox ? $" (for {Clean(mailbox.Address)})" : "")}";
}
