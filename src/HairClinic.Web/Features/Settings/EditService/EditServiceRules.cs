namespace HairClinic.Web.Features.Settings;

public sealed class EditServiceRules : AbstractValidator<EditService.Input>
{
    public EditServiceRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type what the service is called.")
            .MaximumLength(100)
            .WithMessage("A name has at most 100 letters.");
        RuleForEach(x => x.Steps)
            .ChildRules(step =>
                step.RuleFor(s => s.Minutes)
                    .NotNull()
                    .WithMessage("Say how many minutes it takes.")
                    .InclusiveBetween(5, 480)
                    .WithMessage("A step lasts 5 to 480 minutes.")
            );
        RuleFor(x => x.PriceMinor).GreaterThanOrEqualTo(0).WithMessage("A price is not below nothing.");
        RuleFor(x => x.Currency).NotEmpty().When(x => x.PriceMinor is not null).WithMessage("Say in which currency.");
    }
}
