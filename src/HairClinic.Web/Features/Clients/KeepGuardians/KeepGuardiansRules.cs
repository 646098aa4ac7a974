namespace HairClinic.Web.Features.Clients;

public sealed class KeepGuardiansRules : AbstractValidator<KeepGuardians.Input>
{
    public KeepGuardiansRules() =>
        When(
            x => x.TakeAway is null,
            () =>
            {
                RuleFor(x => x.Name)
                    .NotEmpty()
                    .WithMessage("Type their name.")
                    .MaximumLength(120)
                    .WithMessage("A name has at most 120 letters.");
                RuleFor(x => x.Email).NotEmpty().EmailAddress().WithMessage("Type their own e-mail address.");
            }
        );
}
