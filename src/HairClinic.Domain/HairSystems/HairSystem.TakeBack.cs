namespace HairClinic.Domain.HairSystems;

public sealed partial class HairSystem
{
    /// <summary>
    /// The last step was wrong: the unit is as before it, and the step stays with the reason. On the day it was written by whoever wrote
    /// it, later by a manager. Asked of a unit whose steps were read.
    /// </summary>
    /// <param name="entry">Who takes it back, and when; its note is the reason.</param>
    /// <param name="loan">Of a step that lent it or brought it back: the loan it is about. Whoever calls it deletes what was begun.</param>
    /// <exception cref="Refusal">It is not the last, was taken back already, something happened since, or it is not theirs.</exception>
    public void TakeBack(UnitStep step, CorrectionRight right, UnitStepEntry entry, UnitLoan? loan = null)
    {
        right.Require(step, entry);
        if (!step.Stands)
            throw new Refusal("It was undone already.");
        if (Snapshot() != step.After || _steps.Exists(later => later.Stands && later.IsAfter(step)))
            throw new Refusal("Something newer is written of unit {0}. Undo that first.", Serial);
        if (step.CorrectsId is { } correctedId)
            SetDay(_steps.Single(s => s.Id == correctedId), step.On, DayWithout(step), loan);
        step.MarkTakenBack(entry.At, entry.By, entry.Note!);
        Restore(step.Before);
        _promises.RemoveAll(p => p.Id == step.Id);
        _arrivals.RemoveAll(a => a.Id == step.Id);
        if (step.Kind is UnitStepKind.Accepted or UnitStepKind.SentBack or UnitStepKind.Refused)
            CurrentArrival?.ForgetInspection();
        if (step.Kind == UnitStepKind.SentForRepair)
            _repairs.RemoveAll(r => r.Id == step.Id);
        if (step.Kind == UnitStepKind.BackFromRepair)
            _repairs.Where(r => r.SentOn is not null && r.DoneOn == step.On).MaxBy(r => r.SentOn)!.UndoBringBack();
        // Lost while it was lent: the loan ended with it.
        if (step.Kind == UnitStepKind.BackFromLoan || step is { Kind: UnitStepKind.Lost, Before.State: UnitState.Lent })
            loan?.UndoBringBack();
    }

    private UnitSnapshot Snapshot() =>
        new(State, Dates, Place, PlaceSalonId, Spot, Cleaning, RemadeTimes, RetiredBecause, ClientId, OrderId) { EndLook = EndLook };

    private void Restore(UnitSnapshot was)
    {
        (State, Dates, Place, PlaceSalonId, Spot) = (was.State, was.Dates, was.Place, was.PlaceSalonId, was.Spot);
        (Cleaning, RemadeTimes, RetiredBecause) = (was.Cleaning, was.RemadeTimes, was.RetiredBecause);
        (ClientId, OrderId, EndLook) = (was.ClientId, was.OrderId, was.EndLook);
    }
}
