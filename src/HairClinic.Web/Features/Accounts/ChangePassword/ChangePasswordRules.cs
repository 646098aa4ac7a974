using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

public sealed class ChangePasswordRules : AbstractValidator<ChangePassword.Input>
{
    public ChangePasswordRules()
    {
        RuleFor(x => x.Present).NotEmpty().WithMessage("Type your present password.");
        RuleFor(x => x.Password).Password();
        RuleFor(x => x.Again).Equal(x => x.Password).WithMessage("The two passwords differ.");
    }
}
