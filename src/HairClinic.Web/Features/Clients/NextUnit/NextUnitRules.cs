namespace HairClinic.Web.Features.Clients;

public sealed class NextUnitRules : AbstractValidator<NextUnit.Input>
{
    public NextUnitRules() => RuleFor(x => x.Note).MaximumLength(1000).WithMessage("A note has at most 1,000 letters.");
}
