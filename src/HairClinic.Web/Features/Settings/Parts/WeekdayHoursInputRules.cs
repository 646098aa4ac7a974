namespace HairClinic.Web.Features.Settings;

/// <summary>What can be told of a day's hours from the form alone; every message stands at the day's first field.</summary>
public sealed class DayHoursRules : AbstractValidator<WeekdayHoursInput>
{
    public DayHoursRules()
    {
        RuleFor(x => x.From)
            .Cascade(CascadeMode.Stop)
            .Must((day, _) => day.From is null == day.To is null && day.SecondFrom is null == day.SecondTo is null)
            .WithMessage("Give both times of a stretch, or neither.")
            .Must((day, _) => day.From is not null || day.SecondFrom is null)
            .WithMessage("A second stretch comes after a first one.")
            .Must((day, _) => day.Spells().All(s => s.To > s.From))
            .WithMessage("A stretch must end after it starts.")
            .Must((day, _) => day.SecondFrom is null || day.SecondFrom >= day.To)
            .WithMessage("The second stretch starts before the first has ended.");
    }
}
