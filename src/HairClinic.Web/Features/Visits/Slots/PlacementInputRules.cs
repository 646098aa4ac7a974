namespace HairClinic.Web.Features.Visits;

public sealed class PlacementInputRules : AbstractValidator<PlacementInput>
{
    public PlacementInputRules()
    {
        RuleFor(x => x.ChairId).NotEmpty().WithMessage("Choose a chair.");
        RuleFor(x => x.PersonId).NotEmpty().WithMessage("Choose who does it.");
        RuleFor(x => x.Day).NotNull().When(x => x.StartsAt is null).WithMessage("Choose a day.");
        RuleFor(x => x.Time).NotNull().When(x => x.StartsAt is null).WithMessage("Choose a time.");
    }
}
