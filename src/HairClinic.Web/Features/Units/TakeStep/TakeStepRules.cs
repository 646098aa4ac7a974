namespace HairClinic.Web.Features.Units;

public sealed class TakeStepRules : AbstractValidator<TakeStep.Input>
{
    // To take it out of service needs a word of why.
    private static readonly UnitStepKind[] Ends =
    [
        UnitStepKind.Retired,
        UnitStepKind.Lost,
        UnitStepKind.Damaged,
        UnitStepKind.ReturnedToClient,
        UnitStepKind.KeptAsSpare,
        UnitStepKind.Cancelled,
    ];

    private static readonly UnitStepKind[] IntoSalon =
    [
        UnitStepKind.Arrived,
        UnitStepKind.BackFromRepair,
        UnitStepKind.BackFromLoan,
        UnitStepKind.Found,
    ];

    public TakeStepRules()
    {
        RuleFor(x => x.On).NotNull().When(x => x.Step != UnitStepKind.Lost).WithMessage("Choose the day.");
        RuleFor(x => x.On)
            .NotNull()
            .When(x => x is { Step: UnitStepKind.Lost, Since: null })
            .WithMessage("Say since when it is gone, or that it is not known.");
        RuleFor(x => x.Note).MaximumLength(500).WithMessage("A note has at most 500 letters.");
        RuleFor(x => x.Note).NotEmpty().When(x => Ends.Contains(x.Step)).WithMessage("Say why.");
        RuleFor(x => x.SalonId)
            .NotNull()
            .When(x => IntoSalon.Contains(x.Step) || x is { Step: UnitStepKind.Moved, WithClient: false })
            .WithMessage("Say in which salon it is.");
        RuleFor(x => x.PromisedFor).NotNull().When(x => x.Step == UnitStepKind.Promised).WithMessage("Choose the day that was promised.");
        RuleFor(x => x.SaidBy).MaximumLength(80).WithMessage("A name has at most 80 letters.");
        RuleFor(x => x.SentTo).MaximumLength(80).WithMessage("A name has at most 80 letters.");
        RuleFor(x => x.Spot).MaximumLength(60).WithMessage("A place has at most 60 letters.");
        RuleFor(x => x.Condition).MaximumLength(500).WithMessage("A note has at most 500 letters.");
        When(
            x => x.Step == UnitStepKind.Arrived,
            () => RuleFor(x => x.Condition).NotEmpty().When(x => x.Damaged == true).WithMessage("Write what is damaged.")
        );
        When(x => x.Step == UnitStepKind.Inspected, Inspection);
        RuleFor(x => x.Repair).NotNull().When(x => x.Step == UnitStepKind.SentForRepair).WithMessage("Choose what is to be mended.");
        RuleFor(x => x.CostMinor).GreaterThanOrEqualTo(0).WithMessage("A price is not below nothing.");
        RuleFor(x => x.DueBackOn).NotNull().When(x => x.Step == UnitStepKind.Lent).WithMessage("Choose the day it is due back.");
        RuleFor(x => x.ClientId)
            .NotNull()
            .When(x => x.Step is UnitStepKind.Lent or UnitStepKind.GivenToClient)
            .WithMessage("Open the client, and choose it there under From the stock.");
    }

    private void Inspection()
    {
        RuleFor(x => x.KindAsOrdered).NotNull().WithMessage("Look, and say whether it is as ordered.");
        RuleFor(x => x.BaseAsOrdered).NotNull().WithMessage("Look, and say whether it is as ordered.");
        RuleFor(x => x.PriceAsOrdered).NotNull().WithMessage("Look, and say whether it is as ordered.");
        RuleFor(x => x.Decision).NotNull().WithMessage("Say what becomes of it.");
        RuleFor(x => x.Note)
            .NotEmpty()
            .When(x => x.Decision is not (null or ArrivalDecision.Accepted))
            .WithMessage("Write what is wrong with it.");
        RuleFor(x => x.RemakePaidBy)
            .NotNull()
            .When(x => x.Decision == ArrivalDecision.Remake)
            .WithMessage("Say who pays for making it again.");
    }
}
