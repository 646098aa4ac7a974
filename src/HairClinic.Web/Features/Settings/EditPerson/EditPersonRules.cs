namespace HairClinic.Web.Features.Settings;

public sealed class EditPersonRules : AbstractValidator<EditPerson.Input>
{
    public EditPersonRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the person's name.")
            .MaximumLength(100)
            .WithMessage("A name has at most 100 letters.");
        RuleForEach(x => x.Work).ChildRules(week => week.RuleForEach(w => w.Days).SetValidator(new DayHoursRules()));
        RuleForEach(x => x.Absences).SetValidator(new DayRangeRules());
    }
}
