namespace HairClinic.Web.Features.Settings;

public sealed class KeepDefaultsRules : AbstractValidator<KeepDefaults.Input>
{
    public KeepDefaultsRules()
    {
        RuleForEach(x => x.Services)
            .ChildRules(s =>
                s.RuleFor(x => x.Minutes)
                    .NotNull()
                    .WithMessage("Say how many minutes it takes.")
                    .InclusiveBetween(5, 480)
                    .WithMessage("A step lasts 5 to 480 minutes.")
            );
        RuleForEach(x => x.Windows)
            .ChildRules(w =>
            {
                w.RuleFor(x => x.EarliestWeeks)
                    .NotNull()
                    .WithMessage("Say after how many weeks the window opens.")
                    .InclusiveBetween(1, HoldWindow.LongestWeeks)
                    .WithMessage("A window opens after 1 to 26 weeks.");
                w.RuleFor(x => x.LatestWeeks)
                    .NotNull()
                    .WithMessage("Say after how many weeks the window closes.")
                    .InclusiveBetween(1, HoldWindow.LongestWeeks)
                    .WithMessage("A window closes after 1 to 26 weeks.")
                    .Must((x, latest) => x.EarliestWeeks is null || latest is null || latest >= x.EarliestWeeks)
                    .WithMessage("The window closes before it opens.");
            });
    }
}
