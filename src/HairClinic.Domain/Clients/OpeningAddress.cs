namespace HairClinic.Domain.Clients;

/// <summary>
/// An e-mail address that opens a client's own pages: the client's own, or of somebody who looks after them. A client's address is
/// their key, so each one keeps who entered it, and opens dates only until somebody else has confirmed it.
/// </summary>
/// <remarks>
/// Rows are made and ended by the database itself, whenever a client's or a guardian's address changes, whoever changes it; here they
/// are only confirmed or denied.
/// </remarks>
public sealed class OpeningAddress : PracticeOwned
{
    /// <summary>How long the link in the letter to the old address works.</summary>
    public static readonly Duration LinkLifetime = Duration.FromDays(7);

    private OpeningAddress() { }

    public Guid ClientId { get; private set; }

    /// <summary>Whose it is when it is not the client's own; the guardian may be gone once it has ended.</summary>
    public Guid? GuardianId { get; private set; }

    /// <summary>In lower case.</summary>
    public string Email { get; private set; } = "";

    public Instant EnteredAt { get; private set; }

    /// <summary>The person who typed or imported it; null for a job.</summary>
    public Guid? EnteredBy { get; private set; }

    /// <summary>In which role; null where nobody acted.</summary>
    public string? EnteredRole { get; private set; }

    public Instant? ConfirmedAt { get; private set; }
    public AddressConfirmationWay? ConfirmedHow { get; private set; }

    /// <summary>The person who did; null when the old address did.</summary>
    public Guid? ConfirmedBy { get; private set; }

    /// <summary>The old address said that it is not theirs.</summary>
    public Instant? DeniedAt { get; private set; }

    /// <summary>Another took its place, or it was taken away.</summary>
    public Instant? EndedAt { get; private set; }

    public Guid? EndedBy { get; private set; }
    public string? EndedRole { get; private set; }

    /// <summary>When the entry was logged and the old address informed.</summary>
    public Instant? ToldAt { get; private set; }

    /// <summary>When it was informed that it no longer opens anything.</summary>
    public Instant? EndToldAt { get; private set; }

    /// <summary>Of the single-use link by which the old address confirms or denies it; only the hash is kept.</summary>
    public byte[]? LinkHash { get; private set; }

    public Instant? LinkExpiresAt { get; private set; }

    public ClientPageAccessLevel Opens =>
        EndedAt is not null || DeniedAt is not null && ConfirmedAt is null ? ClientPageAccessLevel.Nothing
        : ConfirmedAt is null ? ClientPageAccessLevel.DatesOnly
        : ClientPageAccessLevel.Everything;

    /// <param name="today">The day it is in the client's home salon.</param>
    /// <param name="guardianUntil">The guardian's last day; null where there is none.</param>
    public ClientPageAccessLevel AccessOn(LocalDate today, LocalDate? guardianUntil) =>
        guardianUntil < today ? ClientPageAccessLevel.Nothing : Opens;

    /// <summary>Enough for its owner to recognise it, too little for anybody else to write to it.</summary>
    public string Masked => Email.Split('@', 2) is [{ Length: > 0 } name, var host] ? $"{name[0]}•••@{host}" : "•••";

    /// <exception cref="Refusal">This person may not, or the address opens nothing any more.</exception>
    public void Confirm(Guid by, AddressConfirmerEligibility right, Instant now)
    {
        if (EndedAt is not null)
            throw new Refusal("This address was changed meanwhile.");
        if (right == AddressConfirmerEligibility.NotTheirRole)
            throw new Refusal("An owner, a manager or a stylist confirms an address, having asked the client.");
        if (right == AddressConfirmerEligibility.NotAtHome)
            throw new Refusal("Their home salon confirms an address, having asked the client.");
        if (right == AddressConfirmerEligibility.EnteredByThem)
            throw new Refusal("You entered this address yourself. Somebody else has to ask the client and confirm it.");
        if (ConfirmedAt is not null)
            return;
        ConfirmedAt = now;
        ConfirmedBy = by;
        ConfirmedHow =
            right == AddressConfirmerEligibility.OnlyProvedAnew ? AddressConfirmationWay.OwnerAlone : AddressConfirmationWay.InPerson;
        // The link stays: the old address may still say no.
    }

    /// <summary>The old address said that it is theirs.</summary>
    public void ConfirmFromOldAddress(Instant now)
    {
        if (ConfirmedAt is null)
            (ConfirmedAt, ConfirmedHow) = (now, AddressConfirmationWay.OldAddress);
        Unlink();
    }

    /// <summary>The old address said that it is not theirs, whoever confirmed it before.</summary>
    public void Deny(Instant now)
    {
        DeniedAt = now;
        (ConfirmedAt, ConfirmedBy, ConfirmedHow) = (null, null, null);
        Unlink();
    }

    public void MarkTold(Instant now) => ToldAt = now;

    public void MarkEndTold(Instant now) => EndToldAt = now;

    /// <summary>The link that was sent confirms or denies it, once.</summary>
    public void IssueLink(byte[] hash, Instant now) => (LinkHash, LinkExpiresAt) = (hash, now + LinkLifetime);

    private void Unlink() => (LinkHash, LinkExpiresAt) = (null, null);
}

/// <summary>How it became known that an address is the client's, or of whom they let look after them.</summary>
public enum AddressConfirmationWay
{
    /// <summary>It was entered before addresses were confirmed at all.</summary>
    Before,

    /// <summary>Confirmed from the client's last confirmed address.</summary>
    OldAddress,

    /// <summary>Somebody who may read health and had not entered it asked the client.</summary>
    InPerson,

    /// <summary>The owner had entered it and nobody else here could confirm it; they proved anew who they are.</summary>
    OwnerAlone,
}

/// <summary>How much of a client's own pages an e-mail address opens.</summary>
public enum ClientPageAccessLevel
{
    /// <summary>Not even a link is sent to it.</summary>
    Nothing,

    /// <summary>The first page, booking, reporting a lift, aftercare, the calendar, settings: what helps with dates and tells of nothing else.</summary>
    DatesOnly,

    /// <summary>Confidential data as well: photos, units, consents, the access log, and the export of it all.</summary>
    Everything,
}
