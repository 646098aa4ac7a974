namespace HairClinic.Web.Features.Settings;

public sealed class DayRangeRules : AbstractValidator<DaysOffInput>
{
    public DayRangeRules()
    {
        RuleFor(x => x.From).NotNull().WithMessage("Give the first day.");
        RuleFor(x => x.To)
            .NotNull()
            .WithMessage("Give the last day.")
            .Must((x, to) => x.From is null || to is null || to >= x.From)
            .WithMessage("The last day comes before the first.");
        RuleFor(x => x.Reason).MaximumLength(200).WithMessage("A reason has at most 200 letters.");
    }
}
