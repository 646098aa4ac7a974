using FluentValidation;

namespace HairClinic.Web.Features.MyHair;

public sealed class AskLinkRules : AbstractValidator<AskLink.Input>
{
    public AskLinkRules() => RuleFor(x => x.Email).NotEmpty().EmailAddress().WithMessage("Type the e-mail address your salon knows.");
}
