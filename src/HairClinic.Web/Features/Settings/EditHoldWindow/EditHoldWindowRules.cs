namespace HairClinic.Web.Features.Settings;

public sealed class EditHoldWindowRules : AbstractValidator<EditHoldWindow.Input>
{
    public EditHoldWindowRules()
    {
        RuleFor(x => x.EarliestWeeks)
            .NotNull()
            .WithMessage("Say after how many weeks the window opens.")
            .InclusiveBetween(1, HoldWindow.LongestWeeks)
            .WithMessage("A window opens after 1 to 26 weeks.");
        RuleFor(x => x.LatestWeeks)
            .NotNull()
            .WithMessage("Say after how many weeks the window closes.")
            .InclusiveBetween(1, HoldWindow.LongestWeeks)
            .WithMessage("A window closes after 1 to 26 weeks.")
            .Must((x, latest) => x.EarliestWeeks is null || latest is null || latest >= x.EarliestWeeks)
            .WithMessage("The window closes before it opens.");
    }
}
