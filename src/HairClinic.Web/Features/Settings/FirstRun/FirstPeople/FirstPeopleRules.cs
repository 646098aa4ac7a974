namespace HairClinic.Web.Features.Settings;

public sealed class FirstPeopleRules : AbstractValidator<FirstPeople.Input>
{
    public FirstPeopleRules() =>
        RuleForEach(x => x.People)
            .ChildRules(p => p.RuleFor(x => x.Name).MaximumLength(100).WithMessage("A name has at most 100 letters."));
}
