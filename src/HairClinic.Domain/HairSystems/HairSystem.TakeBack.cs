namespace HairClinic.Domain.HairSystems;

public sealed partial class HairSystem
{
    /// <summary>
    /// The last step was wrong: the unit is as before it, and the step stays with the reason. On the day it was written by whoever wrote
    /// it, later by a manager. Asked of a unit whose steps were read.
    /// </summary>
    /// <param name="writtenOn">The salon's day on which it was written.</param>
    /// <param name="mayCorrectOthers">Owner or manager.</param>
    /// <param name="loan">Of a step that lent it or brought it back: the loan it is about. Whoever calls it deletes what was begun.</param>
    /// <exception cref="Refusal">It is not the last, was taken back already, something happened since, or it is not theirs.</exception>
    public void TakeBack(
        UnitStep step,
        LocalDate writtenOn,
        LocalDate today,
        Instant at,
        Guid? by,
        bool mayCorrectOthers,
        string because,
        UnitLoan? loan = null
    )
    {
        if (!mayCorrectOthers && (step.RecordedBy != by || writtenOn != today))
            throw new Refusal("On the day it was written whoever wrote it can take it back; later a manager.");
        if (string.IsNullOrWhiteSpace(because))
            throw new Refusal("Say what was wrong with it.") { Field = "Because" };
        if (!step.Stands)
            throw new Refusal("It was taken back already.");
        if (Snapshot() != step.After || _steps.Exists(later => later.Stands && later.IsAfter(step)))
            throw new Refusal("Something happened to unit {0} since. Take that back first.", Serial);
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
        step.MarkTakenBack(at, by, because);
    }

    private UnitSnapshot Snapshot() =>
        new(State, Dates, Place, PlaceSalonId, Spot, Cleaning, RemadeTimes, RetiredBecause, ClientId, OrderId);

    private void Restore(UnitSnapshot was)
    {
        (State, Dates, Place, PlaceSalonId, Spot) = (was.State, was.Dates, was.Place, was.PlaceSalonId, was.Spot);
        (Cleaning, RemadeTimes, RetiredBecause) = (was.Cleaning, was.RemadeTimes, was.RetiredBecause);
        (ClientId, OrderId) = (was.ClientId, was.OrderId);
    }
}
