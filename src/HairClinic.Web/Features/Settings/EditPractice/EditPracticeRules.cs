namespace HairClinic.Web.Features.Settings;

public sealed class EditPracticeRules : AbstractValidator<EditPractice.Input>
{
    public EditPracticeRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the practice's name.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.CureHours)
            .NotNull()
            .WithMessage("Say how many hours a bond cures.")
            .InclusiveBetween(24, 48)
            .WithMessage("A cure lasts 24 to 48 hours; the product's label may ask for more care, never less.");
        RuleFor(x => x.DaysBeforeEvent)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(1, 60)
            .WithMessage("Give 1 to 60 days.");
        RuleFor(x => x.CelebrationSoundPercent)
            .NotNull()
            .WithMessage("Give a number of percent.")
            .InclusiveBetween(50, 99)
            .WithMessage("The chance that a bond lasts to the end of an event is set from 50 to 99 percent.");
        RuleFor(x => x.JourneySoundPercent)
            .NotNull()
            .WithMessage("Give a number of percent.")
            .InclusiveBetween(50, 99)
            .WithMessage("The chance that a bond lasts to the end of an event is set from 50 to 99 percent.");
        RuleFor(x => x.OpeningSoonDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(0, 60)
            .WithMessage("Give 0 to 60 days.");
        RuleFor(x => x.ClientMoveHours)
            .NotNull()
            .WithMessage("Give a number of hours.")
            .InclusiveBetween(0, 168)
            .WithMessage("Clients may change a visit up to 0 to 168 hours before it.");
        RuleFor(x => x.GrantDaysAfterVisit)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(0, 730)
            .WithMessage("Another salon may see a client for 0 to 730 days after a visit there.");
        RuleFor(x => x.PreparationDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(0, 90)
            .WithMessage("A unit is ready to bond 0 to 90 days after it arrives.");
        RuleFor(x => x.GapChancePercent)
            .NotNull()
            .WithMessage("Give a number of percent.")
            .InclusiveBetween(1, 30)
            .WithMessage("The accepted chance of a day with no unit that still wears well is 1 to 30 percent.");
    }
}
