namespace HairClinic.Web.Features.Settings;

public sealed class EditUnitKindRules : AbstractValidator<EditUnitKind.Input>
{
    public EditUnitKindRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type what this kind of unit is called.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.BaseMaterialId).NotEmpty().WithMessage("Choose the base it is made on.");
        RuleFor(x => x.LeadHalfDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(1, 729)
            .WithMessage("Give 1 to 729 days.");
        RuleFor(x => x.LeadNineInTenDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .LessThanOrEqualTo(730)
            .WithMessage("Give 730 days at most.")
            .GreaterThan(x => x.LeadHalfDays)
            .WithMessage("Nine in ten take longer than half of them.");
    }
}
