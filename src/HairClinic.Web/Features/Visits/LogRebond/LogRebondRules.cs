namespace HairClinic.Web.Features.Visits;

public sealed class LogRebondRules : AbstractValidator<LogRebond.Input>
{
    public LogRebondRules()
    {
        Include(new TakeDownRules());
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
}
