namespace HairClinic.Web.Features.Clients;

public sealed class NextUnitRules : AbstractValidator<NextUnit.Input>
{
    /// <summary>Beyond a dozen the arithmetic names no number.</summary>
    private const int MostDrafts = 12;

    public NextUnitRules()
    {
        RuleFor(x => x.Note).MaximumLength(1000).WithMessage("A note has at most 1,000 letters.");
        RuleFor(x => x.Wanted).InclusiveBetween(1, MostDrafts).WithMessage("1 to 12 units are drafted at once.");
    }
}
