namespace HairClinic.Web.Features.Visits;

public sealed class LogRebondRules : AbstractValidator<LogRebond.Input>
{
    public LogRebondRules()
    {
        When(x => x.WornBondId is not null, TakeDown);
        RuleFor(x => x.UnitId).NotNull().WithMessage("Choose the unit that went on.");
        RuleFor(x => x.Products).NotEmpty().When(x => x.Attachment != Attachment.Clips).WithMessage("Add what bonded it, with its lot.");
        RuleForEach(x => x.Products)
            .ChildRules(line =>
            {
                line.RuleFor(l => l.ProductId).NotEmpty().WithMessage("Choose a product, or remove the line.");
                line.RuleFor(l => l.Coats).InclusiveBetween(1, 12).WithMessage("Coats lie between 1 and 12.");
            });
        RuleFor(x => x.Products)
            .Must(lines => lines.DistinctBy(l => (l.ProductId, l.LotId)).Count() == lines.Count)
            .WithMessage("The same product and lot is listed twice.");
        RuleFor(x => x.WaitsKept)
            .NotNull()
            .When(x => x.Attachment is Attachment.Liquid or Attachment.Mixed)
            .WithMessage("Say whether each coat was left to dry: it is how the practice learns what holds.");
        RuleFor(x => x.Note).MaximumLength(2000).WithMessage("A note has at most 2,000 letters.");
    }

    private void TakeDown()
    {
        RuleFor(x => x.FoundLifted).NotNull().WithMessage("Say whether an edge was up when the client came.");
        RuleFor(x => x.LiftedOn)
            .NotNull()
            .When(x => x is { FoundLifted: true, LiftDayUnknown: false })
            .WithMessage("Ask on which day it was noticed, or say that it is not known.");
        RuleFor(x => x.Because)
            .NotEqual(RemovalReason.Lifted)
            .When(x => x.FoundLifted == false)
            .WithMessage("If it came off because it lifted, say that an edge was up.");
        RuleFor(x => x.Shedding).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Knots).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Base).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Fit).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Hair).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Colour).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
    }

    private static bool Graded(int? grade) => grade is >= 0 and <= 4;
}
