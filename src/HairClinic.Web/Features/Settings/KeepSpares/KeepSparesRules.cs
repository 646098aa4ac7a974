namespace HairClinic.Web.Features.Settings;

public sealed class KeepSparesRules : AbstractValidator<KeepSpares.Input>
{
    public KeepSparesRules() =>
        RuleForEach(x => x.Lines)
            .ChildRules(line =>
                line.RuleFor(l => l.Spares).InclusiveBetween(0, UnitKind.MostSpares).WithMessage("Keep no spare, one or two.")
            );
}
