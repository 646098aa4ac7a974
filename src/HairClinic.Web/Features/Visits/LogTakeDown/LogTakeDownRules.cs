namespace HairClinic.Web.Features.Visits;

public sealed class LogTakeDownRules : AbstractValidator<LogTakeDown.Input>
{
    public LogTakeDownRules()
    {
        Include(new TakeDownRules());
        RuleForEach(x => x.Products)
            .ChildRules(line => line.RuleFor(l => l.ProductId).NotEmpty().WithMessage("Choose a product, or remove the line."));
        RuleFor(x => x.Products)
            .Must(lines => lines.DistinctBy(l => (l.ProductId, l.LotId)).Count() == lines.Count)
            .WithMessage("The same product and lot is listed twice.");
        RuleFor(x => x.Note).MaximumLength(2000).WithMessage("A note has at most 2,000 letters.");
    }
}
