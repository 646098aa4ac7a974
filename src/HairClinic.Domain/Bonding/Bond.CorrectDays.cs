namespace HairClinic.Domain.Bonding;

public sealed partial class Bond
{
    /// <summary>An old book has this bond with wrong days. The days of one that was made at a visit are those of its visit.</summary>
    /// <param name="lifted">The day it lifted; null where nobody noticed one.</param>
    /// <param name="others">The other bonds of this head, and of this unit.</param>
    /// <exception cref="Refusal">It was made at a visit, is on the head, or the days cannot be.</exception>
    public void CorrectDays(
        LocalDate on,
        LocalDate off,
        LocalDate? lifted,
        IEnumerable<(LocalDate On, LocalDate? Off)> others,
        LocalDate today
    )
    {
        if (VisitId is not null || IsOpen)
            throw new Refusal("The days of this bond are those of its visits: open the visit and undo its log.");
        on.RequireReached(today, "BondedOn");
        off.RequireReached(today, "CameOffOn");
        if (off < on)
            throw new Refusal("A bond cannot be taken off before it was made, on {0}.", on) { Field = "CameOffOn" };
        if (lifted < on || lifted > off)
            throw new Refusal("The day it lifted lies between the day it was made and the day it came off.") { Field = "LiftedOn" };
        foreach (var (begins, ends) in others)
        {
            if (begins < off && (ends is null || ends > on))
                throw new Refusal("Another bond of this client or unit begins on {0}: they would be on at once.", begins)
                {
                    Field = "BondedOn",
                };
        }
        (AppliedOn, RemovedOn) = (on, off);
        Lift = LiftBetween(on, off, lifted);
        if (LastSoundOn < on || LastSoundOn > (lifted ?? off))
            LastSoundOn = null;
    }

    private Lift? LiftBetween(LocalDate on, LocalDate off, LocalDate? lifted)
    {
        if (Lift is not { } was)
            return lifted is { } day ? new Lift(off, day, null, SpotFixed: false) : null;
        var told = LocalDate.Max(lifted ?? on, LocalDate.Min(was.ReportedOn, off));
        return new Lift(told, lifted, was.Zone, was.SpotFixed);
    }
}
