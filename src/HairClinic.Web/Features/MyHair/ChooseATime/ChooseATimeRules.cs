using FluentValidation;

namespace HairClinic.Web.Features.MyHair;

public sealed class ChooseATimeRules : AbstractValidator<ChooseATime.Input>
{
    public ChooseATimeRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.At).NotNull().WithMessage("Choose a time.");
    }
}
