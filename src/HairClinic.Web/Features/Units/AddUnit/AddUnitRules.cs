namespace HairClinic.Web.Features.Units;

public sealed class AddUnitRules : AbstractValidator<AddUnit.Input>
{
    public AddUnitRules()
    {
        RuleFor(x => x.Origin).NotNull().WithMessage("Say where it comes from.");
        RuleFor(x => x.UnitKindId).NotNull().WithMessage("Choose the kind of unit.");
        RuleFor(x => x.Serial)
            .NotEmpty()
            .WithMessage("Give it a serial.")
            .MaximumLength(40)
            .WithMessage("A serial has at most 40 letters.");
        When(
            x => x.Origin is not (null or UnitOrigin.ToBeOrdered),
            () =>
            {
                RuleFor(x => x.HereSince).NotNull().WithMessage("Say since when it is here.");
                RuleFor(x => x.SalonId).NotNull().WithMessage("Say in which salon it is.");
            }
        );
        RuleFor(x => x.PriceMinor).GreaterThanOrEqualTo(0).WithMessage("A price is not below nothing.");
    }
}
