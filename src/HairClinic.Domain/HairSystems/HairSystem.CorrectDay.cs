namespace HairClinic.Domain.HairSystems;

public sealed partial class HairSystem
{
    /// <summary>The day that counts for a step: the one it was corrected to last, else its own. Asked of a unit whose steps were read.</summary>
    public LocalDate DayOf(UnitStep step) => _steps.Where(s => s.Stands && s.CorrectsId == step.Id).MaxBy(s => s.RecordedAt)?.On ?? step.On;

    private LocalDate DayWithout(UnitStep correction) =>
        (
            _steps.Where(s => s.Stands && s.CorrectsId == correction.CorrectsId && s != correction).MaxBy(s => s.RecordedAt)
            ?? _steps.Single(s => s.Id == correction.CorrectsId)
        ).On;

    /// <summary>
    /// A step happened on another day than was written, whatever came after it. The day must leave the order of all that happened as it
    /// is; what was written before stays in the trail. Asked of a unit whose steps were read.
    /// </summary>
    /// <param name="onHead">When it was on a head; the second day is null while it is.</param>
    /// <param name="loan">Of a step that lent it or brought it back: the loan it is about.</param>
    /// <exception cref="Refusal">It is not theirs to correct, was taken back, says that day already, or would change places with another.</exception>
    public UnitStep CorrectDay(
        UnitStep step,
        LocalDate to,
        CorrectionRight right,
        IReadOnlyList<(LocalDate On, LocalDate? Off)> onHead,
        UnitStepEntry entry,
        UnitLoan? loan = null
    )
    {
        right.Require(step, entry);
        if (!step.Stands)
            throw new Refusal("It was undone already.");
        if (step.CorrectsId is not null)
            throw new Refusal("Change the date of the entry itself.");
        var from = DayOf(step);
        if (to == from)
            throw new Refusal("That is the day it has already.") { Field = "On" };
        RequireSameOrder(step, from, to);
        // Of one that came without an order no step says when.
        if (step.Before.Dates.ArrivedOn is not null && !_steps.Exists(s => s.Kind == UnitStepKind.Arrived))
            RequireHere(to);
        RequireSameSideOfBonds(from, to, onHead);
        var correction = Step(UnitStepKind.DayCorrected, to, entry with { LastOffOn = null }, () => SetDay(step, from, to, loan));
        correction.SetCorrects(step.Id);
        return correction;
    }

    private void RequireSameOrder(UnitStep step, LocalDate from, LocalDate to)
    {
        var others = _steps.Where(s => s.Stands && s.CorrectsId is null && s != step).ToList();
        // The nearest is named: it is the one to look at.
        if (others.Where(o => step.IsAfter(o) && DayOf(o) <= from && DayOf(o) > to).MaxBy(o => o.RecordedAt) is { } before)
            throw new Refusal("It came after “{0}” on {1}: choose that day or later.", before.Kind, DayOf(before)) { Field = "On" };
        if (others.Where(o => o.IsAfter(step) && DayOf(o) >= from && DayOf(o) < to).MinBy(o => o.RecordedAt) is { } after)
            throw new Refusal("“{0}” came after it on {1}: choose that day or earlier.", after.Kind, DayOf(after)) { Field = "On" };
    }

    private void RequireSameSideOfBonds(LocalDate from, LocalDate to, IReadOnlyList<(LocalDate On, LocalDate? Off)> onHead)
    {
        foreach (var (on, off) in onHead)
        {
            if (off <= from && to < off)
                throw new Refusal("Unit {0} was on a head until {1}: choose that day or later.", Serial, off) { Field = "On" };
            if (on >= from && to > on)
                throw new Refusal("Unit {0} has been on a head since {1}: choose that day or earlier.", Serial, on) { Field = "On" };
        }
    }

    /// <summary>Writes a step's day wherever the unit keeps it. What an earlier round of a remake left is told by its arrival alone.</summary>
    private void SetDay(UnitStep step, LocalDate from, LocalDate to, UnitLoan? loan)
    {
        if (!_steps.Exists(s => s.Stands && s.Kind == step.Kind && s.IsAfter(step)))
            Move(State, DatesWith(step.Kind, from, to));
        // Also a remake may have been promised with being sent back.
        _promises.FirstOrDefault(p => p.Id == step.Id)?.CorrectSaidOn(to);
        switch (step.Kind)
        {
            case UnitStepKind.Arrived:
                _arrivals.FirstOrDefault(a => a.Id == step.Id)?.CorrectArrivedOn(to);
                break;
            case UnitStepKind.Accepted or UnitStepKind.SentBack or UnitStepKind.Refused:
                ArrivalBefore(step)?.CorrectInspectedOn(to);
                break;
            case UnitStepKind.SentForRepair:
                _repairs.FirstOrDefault(r => r.Id == step.Id)?.CorrectSentOn(to);
                break;
            case UnitStepKind.BackFromRepair:
                _repairs.Where(r => r.SentOn is not null && r.DoneOn == from).MaxBy(r => r.SentOn)?.CorrectDoneOn(to);
                break;
            case UnitStepKind.Lent:
                loan?.CorrectLentOn(to);
                break;
            case UnitStepKind.BackFromLoan or UnitStepKind.Lost when loan?.BackOn == from:
                loan.CorrectBackOn(to);
                break;
        }
    }

    private UnitDates DatesWith(UnitStepKind kind, LocalDate from, LocalDate to) =>
        kind switch
        {
            UnitStepKind.Ordered when Dates.OrderedOn == from => Dates with { OrderedOn = to },
            UnitStepKind.Acknowledged when Dates.AcknowledgedOn == from => Dates with { AcknowledgedOn = to },
            UnitStepKind.Shipped when Dates.ShippedOn == from => Dates with { ShippedOn = to },
            UnitStepKind.Arrived or UnitStepKind.Found when Dates.ArrivedOn == from => Dates with { ArrivedOn = to },
            UnitStepKind.Accepted when Dates.AcceptedOn == from => Dates with
            {
                AcceptedOn = to,
                InspectedOn = Dates.InspectedOn == from ? to : Dates.InspectedOn,
            },
            UnitStepKind.SentBack when Dates.SentBackOn == from => Dates with { SentBackOn = to },
            UnitStepKind.Prepared when Dates.PreparedOn == from => Dates with { PreparedOn = to },
            UnitStepKind.Refused
            or UnitStepKind.KeptAsSpare
            or UnitStepKind.Retired
            or UnitStepKind.Lost
            or UnitStepKind.Damaged
            or UnitStepKind.ReturnedToClient
            or UnitStepKind.Cancelled when Dates.RetiredOn == from => Dates with
            {
                RetiredOn = to,
            },
            _ => Dates,
        };

    private UnitArrival? ArrivalBefore(UnitStep step)
    {
        var came = _steps.Where(s => s.Stands && s.Kind == UnitStepKind.Arrived && step.IsAfter(s)).MaxBy(s => s.RecordedAt);
        return _arrivals.FirstOrDefault(a => a.Id == came?.Id);
    }
}

/// <summary>Whose corrections are taken: on the salon's day it was written of whoever wrote it, later of a manager.</summary>
/// <param name="WrittenOn">The salon's day on which the step was written.</param>
/// <param name="MayCorrectOthers">Owner or manager.</param>
public sealed record CorrectionRight(LocalDate WrittenOn, bool MayCorrectOthers)
{
    public bool Allows(UnitStep step, Guid? by, LocalDate today) => MayCorrectOthers || step.RecordedBy == by && WrittenOn == today;

    /// <exception cref="Refusal">It is not theirs, or no reason is given.</exception>
    public void Require(UnitStep step, UnitStepEntry entry)
    {
        if (!Allows(step, entry.By, entry.Today))
            throw new Refusal("Only whoever wrote it can change it, and only on the same day. Ask a manager or the owner.");
        if (string.IsNullOrWhiteSpace(entry.Note))
            throw new Refusal("Say what was wrong with it.") { Field = "Because" };
    }
}
