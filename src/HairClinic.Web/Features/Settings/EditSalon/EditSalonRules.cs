namespace HairClinic.Web.Features.Settings;

public sealed class EditSalonRules : AbstractValidator<EditSalon.Input>
{
    public EditSalonRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the salon's name.")
            .MaximumLength(100)
            .WithMessage("A name has at most 100 letters.");
        RuleFor(x => x.Zone)
            .Must(z => DateTimeZoneProviders.Tzdb.GetZoneOrNull(z) is not null)
            .WithMessage("Choose the time zone: type a town or a country and take one of those found.");
        RuleFor(x => x.Currency).Matches("^[A-Z]{3}$").WithMessage("A currency is written with three capital letters, such as GBP.");
        RuleFor(x => x.Phone).MaximumLength(40).WithMessage("A phone number has at most 40 signs.");
        RuleFor(x => x.Address).MaximumLength(500).WithMessage("An address has at most 500 letters.");
        RuleForEach(x => x.Hours).SetValidator(new DayHoursRules());
        RuleForEach(x => x.Closures).SetValidator(new DayRangeRules());
    }
}
