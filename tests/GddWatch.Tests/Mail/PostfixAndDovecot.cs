using System.Diagnostics;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GddWatch.Tests.Loopback;
using MailKit;
using MailKit.Net.Imap;
using MailKit.Security;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Mail;

/// <summary>
/// Debian's Postfix and Dovecot on this machine alone, with folders, ports, mailboxes and a certificate of their own: mail is handed in over STARTTLS after a login,
/// and read back over IMAP. Nothing under /etc is used, and no mail leaves the machine.
/// </summary>
public sealed class PostfixAndDovecot : IAsyncLifetime
{
    public const string User = "service@example.org";
    public const string Password = "a quiet secret";

    private const string Postfix = "/usr/sbin/postfix";
    private const string Dovecot = "/usr/sbin/dovecot";
    private const string Doveadm = "/usr/bin/doveadm";

    /// <summary>The mailboxes that there are; the server knows no others.</summary>
    private static readonly string[] Mailboxes = ["adviser@example.org", "partner@example.org", "operator@example.org", User];

    /// <summary>How long a mail may take from the server's acceptance to its mailbox.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly string folder = Directory.CreateTempSubdirectory("gddwatch-postfix-").FullName;
    private bool isRunning;

    public int SmtpPort { get; } = LoopbackMailServer.FreePort();

    /// <summary>The certificate's file: nobody vouches for it but itself.</summary>
    public string CertificateFile => Path.Combine(folder, "certificate.pem");

    private int ImapPort { get; } = LoopbackMailServer.FreePort();

    /// <summary>Why it cannot be had here; null where it runs.</summary>
    private static string? WhyAbsent
    {
        get
        {
            const string install = "apt-get install --no-install-recommends postfix dovecot-imapd dovecot-lmtpd";
            if (!OperatingSystem.IsLinux()) return "This test sends through Postfix and Dovecot, which are run on Linux alone.";
            string[] needed = [Postfix, Dovecot, Doveadm, "/usr/lib/dovecot/imap", "/usr/lib/dovecot/lmtp"];
            string[] absent = [.. needed.Where(file => !File.Exists(file))];
            if (absent.Length > 0) return $"This test sends through Postfix and Dovecot, and {absent[0]} is not there ({install}).";
            return Environment.IsPrivilegedProcess ? null : "This test starts Postfix and Dovecot, which only root may.";
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (WhyAbsent is not null) return;
        WriteFiles();
        await RunAsync(Dovecot, "-c", Path.Combine(folder, "dovecot.conf"));
        isRunning = true;
        await RunAsync(Postfix, "-c", Path.Combine(folder, "postfix"), "start");
    }

    public async ValueTask DisposeAsync()
    {
        if (isRunning)
        {
            await RunAsync(Postfix, "-c", Path.Combine(folder, "postfix"), "stop");
            await RunAsync(Doveadm, "-c", Path.Combine(folder, "dovecot.conf"), "stop");
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Ends the test where the servers cannot be had: skipped, or failed where GDDWATCH_REQUIRE names mail.</summary>
    public static void Require()
    {
        if (WhyAbsent is { } reason) Outside.Missing("mail", reason);
    }

    /// <summary>The mails of a mailbox, once so many have come; those there are where the patience ends before.</summary>
    public async Task<IReadOnlyList<MimeMessage>> ReadAsync(string mailbox, int expected, CancellationToken stop)
    {
        using var client = new ImapClient { ServerCertificateValidationCallback = (_, certificate, _, _) => certificate?.GetCertHashString() == X509CertificateLoader.LoadCertificateFromFile(CertificateFile).GetCertHashString() };
        await client.ConnectAsync("127.0.0.1", ImapPort, SecureSocketOptions.StartTls, stop);
        await client.AuthenticateAsync(mailbox, Password, stop);
        await client.Inbox!.OpenAsync(FolderAccess.ReadOnly, stop);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        while (client.Inbox.Count < expected && !patience.IsCancellationRequested)
        {
            // The server tells when something comes.
            using var news = CancellationTokenSource.CreateLinkedTokenSource(patience.Token);
            EventHandler<EventArgs> came = (_, _) => news.Cancel();
            client.Inbox.CountChanged += came;
            await client.IdleAsync(news.Token, stop);
            client.Inbox.CountChanged -= came;
        }

        var mails = new List<MimeMessage>();
        for (int index = 0; index < client.Inbox.Count; index++) mails.Add(await client.Inbox.GetMessageAsync(index, stop));
        await client.DisconnectAsync(quit: true, stop);
        return mails;
    }

    private void WriteFiles()
    {
        // Their own accounts must get into the folder.
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        foreach (string each in (string[])["postfix", "queue", "data", "run", "state", "mail"]) Directory.CreateDirectory(Path.Combine(folder, each));
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        File.WriteAllText(CertificateFile, certificate.ExportCertificatePem());
        using RSA key = certificate.GetRSAPrivateKey()!;
        File.WriteAllText(Path.Combine(folder, "key.pem"), key.ExportPkcs8PrivateKeyPem());
        File.WriteAllLines(Path.Combine(folder, "users"), Mailboxes.Select(mailbox => $"{mailbox}:{{PLAIN}}{Password}:mail:mail::{folder}/mail/{mailbox}"));
        File.WriteAllLines(Path.Combine(folder, "postfix", "mailboxes"), Mailboxes.Select(mailbox => $"{mailbox} there"));
        File.WriteAllText(Path.Combine(folder, "dovecot.conf"), DovecotConf());
        File.WriteAllText(Path.Combine(folder, "postfix", "main.cf"), MainCf());
        File.WriteAllText(Path.Combine(folder, "postfix", "master.cf"), MasterCf());
        Chown("mail", "mail");
        Chown("postfix", "data");
    }

    private void Chown(string owner, string what) => RunAsync("/bin/chown", owner, Path.Combine(folder, what)).GetAwaiter().GetResult();

    private static async Task RunAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        // Their daemons keep the streams open, so that only the exit is awaited.
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
    }

    private string DovecotConf() => $$"""
        base_dir = {{folder}}/run
        state_dir = {{folder}}/state
        log_path = {{folder}}/dovecot.log
        protocols = imap lmtp
        listen = 127.0.0.1
        ssl = required
        ssl_cert = <{{CertificateFile}}
        ssl_key = <{{folder}}/key.pem
        mail_location = maildir:~/Maildir
        auth_mechanisms = plain login
        first_valid_uid = 1
        passdb {
          driver = passwd-file
          args = {{folder}}/users
        }
        userdb {
          driver = passwd-file
          args = {{folder}}/users
        }
        service imap-login {
          chroot =
          inet_listener imap {
            port = {{ImapPort}}
          }
          inet_listener imaps {
            port = 0
          }
        }
        service anvil {
          chroot =
        }
        service auth {
          unix_listener pf-auth {
            mode = 0666
          }
        }
        service lmtp {
          unix_listener pf-lmtp {
            mode = 0666
          }
        }

        """;

    private string MainCf() => $$"""
        compatibility_level = 3.6
        queue_directory = {{folder}}/queue
        data_directory = {{folder}}/data
        maillog_file = {{folder}}/postfix.log
        maillog_file_prefixes = {{folder}}
        inet_interfaces = loopback-only
        inet_protocols = ipv4
        myhostname = localhost
        mydestination =
        mynetworks =
        virtual_mailbox_domains = example.org
        virtual_mailbox_maps = texthash:{{folder}}/postfix/mailboxes
        virtual_transport = lmtp:unix:{{folder}}/run/pf-lmtp
        default_transport = error:no mail leaves this machine
        relay_transport = error:no mail leaves this machine
        smtpd_tls_cert_file = {{CertificateFile}}
        smtpd_tls_key_file = {{folder}}/key.pem
        smtpd_tls_security_level = encrypt
        smtpd_sasl_auth_enable = yes
        smtpd_sasl_type = dovecot
        smtpd_sasl_path = {{folder}}/run/pf-auth
        smtpd_client_restrictions = permit_sasl_authenticated, reject
        smtpd_relay_restrictions = permit_sasl_authenticated, reject
        smtpd_recipient_restrictions = reject_unlisted_recipient, permit_sasl_authenticated, reject
        alias_maps =

        """;

    private string MasterCf() => $$"""
        127.0.0.1:{{SmtpPort}} inet n - n - - smtpd
        postlog   unix-dgram n - n - 1 postlogd
        pickup    unix n - n 60 1 pickup
        cleanup   unix n - n - 0 cleanup
        qmgr      unix n - n 300 1 qmgr
        rewrite   unix - - n - - trivial-rewrite
        bounce    unix - - n - 0 bounce
        defer     unix - - n - 0 bounce
        trace     unix - - n - 0 bounce
        verify    unix - - n - 1 verify
        flush     unix n - n 1000? 0 flush
        proxymap  unix - - n - - proxymap
        lmtp      unix - - n - - lmtp
        error     unix - - n - - error
        retry     unix - - n - - error
        anvil     unix - - n - 1 anvil
        scache    unix - - n - 1 scache
        tlsmgr    unix - - n 1000? 1 tlsmgr
        showq     unix n - n - - showq

        """;
}
