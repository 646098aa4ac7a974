using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Settings;

public sealed class CreatePracticeRules : AbstractValidator<CreatePractice.Input>
{
    public CreatePracticeRules()
    {
        RuleFor(x => x.PracticeName)
            .NotEmpty()
            .WithMessage("Type the practice's name.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.Region).Must(r => Regions.All.Any(c => c.Value == r)).WithMessage("Choose a country from the list.");
        RuleFor(x => x.Culture).Must(c => Regions.Cultures.Any(k => k.Value == c)).WithMessage("Choose a language from the list.");
        RuleFor(x => x.OwnerName)
            .NotEmpty()
            .WithMessage("Type your name.")
            .MaximumLength(100)
            .WithMessage("A name has at most 100 letters.");
        RuleFor(x => x.SignInName).MustBeSignInName();
        RuleFor(x => x.Password).Password(x => [x.PracticeName, x.OwnerName, x.SignInName]);
    }
}
