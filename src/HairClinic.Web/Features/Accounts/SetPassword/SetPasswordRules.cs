using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

public sealed class SetPasswordRules : AbstractValidator<SetPassword.Input>
{
    public SetPasswordRules()
    {
        RuleFor(x => x.Password).Password();
        RuleFor(x => x.Again).Equal(x => x.Password).WithMessage("The two passwords differ.");
    }
}
