namespace HairClinic.Domain.Bonding;

public sealed partial class Bond
{
    /// <summary>The bond as the records had it at the end of an earlier day; null where it was not made yet.</summary>
    /// <remarks>
    /// Strict: what was written down later is not there. A lift counts from its report on, and what came off at home from the day it was
    /// told of. Of an open bond only the last sound day is kept, which later days move: it is left away, and the bond counts as sound until
    /// its window closed, as every open bond does. Days that were corrected count as corrected.
    /// </remarks>
    public Bond? AsOf(LocalDate day)
    {
        if (AppliedOn > day)
            return null;
        var lift = Lift?.ReportedOn <= day ? Lift : null;
        var off = OffKnownOn() <= day;
        var was = new Bond(Id, HairSystemId, ClientId, AppliedOn, AppliedAt, Attachment, AppliedBy)
        {
            VisitId = VisitId,
            WaitsKept = WaitsKept,
            OpensOn = OpensOn,
            TargetOn = TargetOn,
            DueOn = DueOn,
            ClosesOn = ClosesOn,
            DueReasons = DueReasons,
            Lift = lift,
            LastSoundOn = (off || lift is not null) && LastSoundOn <= day ? LastSoundOn : null,
            RemovedOn = off ? RemovedOn : null,
            RemovedBecause = off ? RemovedBecause : null,
            NoBondUntil = off ? NoBondUntil : null,
        };
        was._products.AddRange(_products);
        return was;
    }

    // What came off at home is told of afterwards.
    private LocalDate? OffKnownOn() =>
        RemovedBecause?.CameOffByItself() == true && Lift?.ReportedOn > RemovedOn ? Lift.ReportedOn : RemovedOn;
}
