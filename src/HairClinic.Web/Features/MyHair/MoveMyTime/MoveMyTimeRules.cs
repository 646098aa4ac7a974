using FluentValidation;

namespace HairClinic.Web.Features.MyHair;

public sealed class MoveMyTimeRules : AbstractValidator<MoveMyTime.Input>
{
    public MoveMyTimeRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.At).NotNull().WithMessage("Choose a time.");
    }
}
