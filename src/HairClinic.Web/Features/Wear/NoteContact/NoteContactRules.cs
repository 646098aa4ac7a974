namespace HairClinic.Web.Features.Wear;

public sealed class NoteContactRules : AbstractValidator<NoteContact.Input>
{
    public NoteContactRules()
    {
        When(
            x => x.Kind == ContactOutcome.PutOff,
            () =>
            {
                RuleFor(x => x.Until).NotNull().WithMessage("Say on which day they come back to the list.");
                RuleFor(x => x.Reason).NotEmpty().WithMessage("Say why, in a few words.");
            }
        );
        RuleFor(x => x.Reason).MaximumLength(200).WithMessage("A reason has at most 200 letters.");
    }
}
