namespace HairClinic.Web.Features.Settings;

public sealed class EditProductRules : AbstractValidator<EditProduct.Input>
{
    public EditProductRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the product's name as its label says it.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.Chemistry).MaximumLength(120).WithMessage("Chemistry has at most 120 letters.");
        RuleFor(x => x.LabelCureHours)
            .InclusiveBetween(Cure.ShortestHours, Cure.LongestHours)
            .WithMessage("A cure lasts 24 to 48 hours; leave it empty when the label asks for less.");
        RuleForEach(x => x.Lots)
            .ChildRules(lot =>
                lot.RuleFor(l => l.Code)
                    .NotEmpty()
                    .WithMessage("Type the lot's code from the bottle.")
                    .MaximumLength(60)
                    .WithMessage("A code has at most 60 letters.")
            );
        RuleFor(x => x.Lots)
            .Must(lots => lots.Select(l => l.Code.Trim()).Distinct(StringComparer.Ordinal).Count() == lots.Count)
            .WithMessage("Two lots have the same code.");
    }
}
