namespace HairClinic.Web.Features.Settings;

public sealed class WearFactorsRules : AbstractValidator<WearFactors.Input>
{
    public WearFactorsRules() =>
        RuleForEach(x => x.Lines)
            .ChildRules(line =>
                line.RuleFor(l => l.Percent)
                    .NotNull()
                    .WithMessage("Give a number of percent; 100 changes nothing.")
                    .InclusiveBetween(20, 200)
                    .WithMessage("Give 20 to 200 percent; 100 changes nothing.")
            );
}
