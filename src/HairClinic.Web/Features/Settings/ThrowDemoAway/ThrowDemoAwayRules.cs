namespace HairClinic.Web.Features.Settings;

public sealed class ThrowDemoAwayRules : AbstractValidator<ThrowDemoAway.Input>
{
    public ThrowDemoAwayRules() => RuleFor(x => x.Name).NotEmpty().WithMessage("Type the practice's name.");
}
