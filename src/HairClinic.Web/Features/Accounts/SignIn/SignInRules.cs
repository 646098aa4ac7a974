using FluentValidation;

namespace HairClinic.Web.Features.Accounts.SignIn;

public sealed class SignInRules : AbstractValidator<SignIn.Input>
{
    public SignInRules()
    {
        RuleFor(x => x.Name).NotEmpty().WithMessage("Type the name you sign in with.");
        RuleFor(x => x.Password).NotEmpty().WithMessage("Type your password.");
    }
}
