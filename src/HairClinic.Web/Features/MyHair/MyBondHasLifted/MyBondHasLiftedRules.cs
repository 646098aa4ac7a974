using FluentValidation;

namespace HairClinic.Web.Features.MyHair;

public sealed class MyBondHasLiftedRules : AbstractValidator<MyBondHasLifted.Input>
{
    public MyBondHasLiftedRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.LiftedOn).NotNull().When(x => !x.DayUnknown).WithMessage("Choose the day, or that you do not know it.");
    }
}
