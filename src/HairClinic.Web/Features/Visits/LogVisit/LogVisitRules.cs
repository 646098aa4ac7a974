namespace HairClinic.Web.Features.Visits;

public sealed class LogVisitRules : AbstractValidator<LogVisit.Input>
{
    public LogVisitRules()
    {
        RuleFor(x => x.EdgeUp)
            .NotNull()
            .When(x => x.MustSayEdges)
            .WithMessage("Say whether an edge was up: it is how the practice learns what holds.");
        When(
            x => x.EdgeUp == true,
            () =>
            {
                RuleFor(x => x.LiftedOn)
                    .NotNull()
                    .When(x => x.LiftedSince is null)
                    .WithMessage("Ask since when the edge has been up, or say that it is not known.");
                RuleFor(x => x.SpotFixed).NotNull().WithMessage("Say whether it was put down again.");
            }
        );
        RuleFor(x => x.Note).MaximumLength(2000).WithMessage("A note has at most 2,000 letters.");
    }
}
