using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Settings;

public sealed class EditAftercareRules : AbstractValidator<EditAftercare.Input>
{
    public EditAftercareRules()
    {
        RuleFor(x => x.Topic).NotNull().IsInEnum();
        RuleFor(x => x.Language).Must(l => Languages.Spoken.Any(s => s.Code == l)).WithMessage("Choose a language clients can read.");
        RuleFor(x => x.Words).MaximumLength(2000).WithMessage("At most 2,000 characters: it is read on a phone.");
    }
}
