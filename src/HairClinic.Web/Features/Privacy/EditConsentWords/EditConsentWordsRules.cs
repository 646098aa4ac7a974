namespace HairClinic.Web.Features.Privacy;

public sealed class EditConsentWordsRules : AbstractValidator<EditConsentWords.Input>
{
    public EditConsentWordsRules()
    {
        RuleFor(x => x.Subject).NotNull().IsInEnum();
        RuleFor(x => x.Language).NotEmpty().MaximumLength(20);
        RuleFor(x => x.Words)
            .NotEmpty()
            .WithMessage("Say what the client agrees to.")
            .MaximumLength(4000)
            .WithMessage("At most 4,000 characters.");
    }
}
