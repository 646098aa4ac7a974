using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

public sealed class GiveAccountRules : AbstractValidator<GiveAccount.Input>
{
    public GiveAccountRules()
    {
        RuleFor(x => x.Name).MustBeSignInName();
        RuleFor(x => x.Email)
            .EmailAddress()
            .When(x => !string.IsNullOrWhiteSpace(x.Email))
            .WithMessage("This does not look like an e-mail address.");
        RuleFor(x => x.Password).Password().When(x => !string.IsNullOrEmpty(x.Password));
    }
}
