namespace HairClinic.Web.Features.Accounts;

public sealed class SignInRules : AbstractValidator<SignIn.Input>
{
    public SignInRules()
    {
        RuleFor(x => x.Name).NotEmpty().WithMessage("Type the name you sign in with.");
        RuleFor(x => x.Password).NotEmpty().WithMessage("Type your password.");
        // More than anybody's password may have: not worth the work of hashing.
        RuleFor(x => x.Password).MaximumLength(4096).WithMessage("Type your password.");
        RuleFor(x => x.Name).MaximumLength(256).WithMessage("Type the name you sign in with.");
    }
}
