namespace HairClinic.Web.Features.Clients;

public sealed class ReportLiftRules : AbstractValidator<ReportLift.Input>
{
    public ReportLiftRules()
    {
        RuleFor(x => x.LiftedOn)
            .NotNull()
            .When(x => !x.DayUnknown)
            .WithMessage("Ask on which day they noticed it, or choose that they do not know.");
        RuleFor(x => x.SpotFixed).NotNull().WithMessage("Choose whether it was put down again or the client is coming in.");
    }
}
