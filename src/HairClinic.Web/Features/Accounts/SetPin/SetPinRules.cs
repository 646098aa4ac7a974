using HairClinic.Web.Accounts.Tablets;

namespace HairClinic.Web.Features.Accounts;

public sealed class SetPinRules : AbstractValidator<SetPin.Input>
{
    public SetPinRules()
    {
        RuleFor(x => x.Pin).Pin();
        RuleFor(x => x.Again).Equal(x => x.Pin).WithMessage("The two PINs differ.");
    }
}
