namespace HairClinic.Web.Mail;

/// <summary>What a page may promise about letters just now.</summary>
/// <param name="Fault">What is wrong with the mail server, as <see cref="WorkFaults"/> names it; null when it takes letters, or is not asked.</param>
/// <param name="KnowsAddress">Whether the site knows the address that links need.</param>
public sealed record MailReadiness(MailWay Way, string? Fault, bool KnowsAddress)
{
    public const string NoServer =
        "No mail server is set, so nothing was sent. Whoever runs this site sets it; the owner sees under Practice, Letters, what is missing.";

    public const string NoAddress =
        "This site was not told its own address, so no link can be sent. Whoever runs it sets Site__Address; the owner sees under Practice, Letters, what is missing.";

    public bool CanSendLinks => Way is not MailWay.None && Fault is null && KnowsAddress;

    /// <summary>Why no link goes out; null when it does.</summary>
    public Refusal? WhyNoLink() =>
        Way is MailWay.None ? new Refusal(NoServer)
        : !KnowsAddress ? new Refusal(NoAddress)
        : Fault is not null ? WhyNotSent(Fault)
        : null;

    /// <summary>What went wrong, for the one who would have had a letter sent.</summary>
    public static Refusal WhyNotSent(string fault) =>
        Kind(fault) switch
        {
            MailFault.NoAnswer => new("The mail server does not answer, so nothing was sent. Try again in a while."),
            MailFault.NotLetIn => new(
                "The mail server does not let this site in, so nothing was sent. Whoever runs it looks at Mail__User and Mail__Password."
            ),
            MailFault.NotSecret => new(
                "No secret connection to the mail server came about, so nothing was sent. Whoever runs this site looks at its certificate, Mail__Port and Mail__Tls."
            ),
            _ => new("The mail server refused the letter ({0}), so nothing was sent.", fault),
        };

    /// <summary>The same about letters that wait: a sentence without a blank.</summary>
    public static string DescribeFaultCode(string? fault) =>
        Kind(fault ?? "") switch
        {
            MailFault.NoAnswer => "The mail server does not answer.",
            MailFault.NotLetIn => "The mail server does not let this site in.",
            MailFault.NotSecret => "No secret connection to the mail server comes about.",
            _ => "The mail server refuses letters.",
        };

    private static MailFault Kind(string fault) =>
        fault switch
        {
            "SocketException" or "IOException" or "TimeoutException" or "OperationCanceledException" or "TaskCanceledException" =>
                MailFault.NoAnswer,
            "SmtpProtocolException" or "ServiceNotConnectedException" => MailFault.NoAnswer,
            "AuthenticationException" or "ServiceNotAuthenticatedException" or "SmtpCommandException 530" => MailFault.NotLetIn,
            "SslHandshakeException" or "NotSupportedException" => MailFault.NotSecret,
            _ => MailFault.Refused,
        };

    private enum MailFault
    {
        NoAnswer,
        NotLetIn,
        NotSecret,
        Refused,
    }
}
