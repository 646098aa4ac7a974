namespace HairClinic.Web.Features.Visits;

public sealed class WalkInRules : AbstractValidator<WalkIn.Input>
{
    public WalkInRules()
    {
        RuleFor(x => x.ClientId).NotEmpty().WithMessage("Find the client first.");
        RuleFor(x => x.ServiceKindId).NotEmpty().WithMessage("Choose what they came for.");
    }
}
