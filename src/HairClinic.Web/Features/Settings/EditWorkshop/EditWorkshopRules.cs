namespace HairClinic.Web.Features.Settings;

public sealed class EditWorkshopRules : AbstractValidator<EditWorkshop.Input>
{
    public EditWorkshopRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the workshop's name.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.RemadeOfTwenty)
            .NotNull()
            .WithMessage("Give a number of orders.")
            .InclusiveBetween(0, 10)
            .WithMessage("Of twenty orders 0 to 10 are made again.");
        RuleFor(x => x.InspectionDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(0, 60)
            .WithMessage("A unit is inspected and sent back within 0 to 60 days.");
        RuleFor(x => x.ClaimDays)
            .NotNull()
            .WithMessage("Give a number of days.")
            .InclusiveBetween(0, 90)
            .WithMessage("A workshop takes claims for 0 to 90 days.");
        RuleForEach(x => x.Closures).SetValidator(new DayRangeRules());
    }
}
