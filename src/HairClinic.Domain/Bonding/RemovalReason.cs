namespace HairClinic.Domain.Bonding;

/// <summary>Why a bond ended. Only a lift says how long it would have held; the others say “at least”.</summary>
public enum RemovalReason
{
    Scheduled,
    Lifted,
    Reaction,
    Style,
    SalonsChoice,
    Other,

    /// <summary>It was logged by mistake and never held: the row only tells which product and lot were at whose head.</summary>
    TakenBack,
}
