namespace HairClinic.Domain.Replacement;

/// <summary>Why somebody had no hair, as far as the records tell: the first that holds.</summary>
public enum GapCause
{
    /// <summary>The last unit in house was lost or damaged.</summary>
    LostOrDamaged,

    /// <summary>The next unit was promised for a day on which there was still hair, and came after it.</summary>
    CameAfterPromise,

    /// <summary>The next unit was ordered less than nine in ten lead times and the preparation before the hair ended.</summary>
    OrderedTooLate,

    /// <summary>Ordered in good time, with no promise broken: it took longer than nine in ten orders do.</summary>
    TookLonger,

    NothingOnOrder,
}
