namespace HairClinic.Web.Features.Settings;

public sealed class EditBaseMaterialRules : AbstractValidator<EditBaseMaterial.Input>
{
    public EditBaseMaterialRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type what the base is called.")
            .MaximumLength(100)
            .WithMessage("A name has at most 100 letters.");
        RuleFor(x => x.LifeFromDays)
            .NotNull()
            .WithMessage("Say by which worn day one in ten is worn out.")
            .InclusiveBetween(1, 3650)
            .WithMessage("A life is 1 to 3650 days.");
        RuleFor(x => x.LifeToDays)
            .NotNull()
            .WithMessage("Say by which worn day nine in ten are worn out.")
            .InclusiveBetween(2, 3650)
            .WithMessage("A life is 1 to 3650 days.")
            .Must((x, to) => x.LifeFromDays is null || to is null || to > x.LifeFromDays)
            .WithMessage("The longer life must be longer than the shorter.");
    }
}
