namespace HairClinic.Web.Features.Clients;

public sealed class WhoMaySeeRules : AbstractValidator<WhoMaySee.Input>
{
    public WhoMaySeeRules()
    {
        RuleFor(x => x.SalonId).NotNull().WithMessage("Choose the salon.");
        RuleFor(x => x.Until).NotNull().WithMessage("Choose the last day.");
        RuleFor(x => x.Because).NotEmpty().WithMessage("Say why the other salon needs to see this client.").MaximumLength(200);
    }
}
