namespace HairClinic.Web.Features.Clients;

public sealed class ReportLiftRules : AbstractValidator<ReportLift.Input>
{
    public ReportLiftRules()
    {
        RuleFor(x => x.LiftedOn)
            .NotNull()
            .When(x => x.LiftedSince is null)
            .WithMessage("Ask since when the edge has been up, or say that it is not known.");
        RuleFor(x => x.SpotFixed).NotNull().WithMessage("Choose whether it was put down again or the client is coming in.");
    }
}
