namespace HairClinic.Web.Features.Visits;

public sealed class BookVisitRules : AbstractValidator<BookVisit.Input>
{
    public BookVisitRules()
    {
        RuleFor(x => x.ClientId).NotEmpty().WithMessage("Choose the client first.");
        RuleFor(x => x.ServiceKindId).NotEmpty().WithMessage("Choose what they come for.");
        RuleFor(x => x.Note).MaximumLength(500).WithMessage("A note has at most 500 letters.");
        Include(new PlacementInputRules());
    }
}
