namespace HairClinic.Web.Features.Privacy;

public sealed class EditRetentionRules : AbstractValidator<EditRetention.Input>
{
    public EditRetentionRules()
    {
        RuleFor(x => x.Subject).NotNull().IsInEnum();
        RuleFor(x => x.KeepDays).NotNull().WithMessage("Say for how many days.");
        RuleFor(x => x.ByItself)
            .Equal(false)
            .When(x => x.Subject == RetentionSubject.ClientsWhoLeft)
            .WithMessage("Nobody is erased unasked: look at the list and confirm it.");
    }
}
