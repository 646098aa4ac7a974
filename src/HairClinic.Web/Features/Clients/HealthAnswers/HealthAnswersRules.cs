namespace HairClinic.Web.Features.Clients;

public sealed class HealthAnswersRules : AbstractValidator<HealthAnswers.Input>
{
    private const int Most = 4000;

    public HealthAnswersRules()
    {
        RuleFor(x => x.History).SetValidator(new HistoryRules()).OverridePropertyName("");
    }

    private sealed class HistoryRules : AbstractValidator<HealthHistory>
    {
        public HistoryRules()
        {
            RuleFor(h => h)
                .Must(h =>
                    new[]
                    {
                        h.SinceWhen,
                        h.HowFast,
                        h.Medicines,
                        h.Surgery,
                        h.Illness,
                        h.HardTimes,
                        h.Treatments,
                        h.Allergies,
                        h.Habits,
                        h.Note,
                    }.All(text => text is null || text.Length <= Most)
                )
                .WithMessage("An answer has at most 4,000 letters.")
                .OverridePropertyName(nameof(HealthHistory.Note));
            RuleFor(h => h.Reactions)
                .Must(all => all.All(r => r.ProductId is not null || !string.IsNullOrWhiteSpace(r.To)))
                .WithMessage("Say what they reacted to, or remove the line.");
            RuleFor(h => h.CareTeamAgreed)
                .Equal(false)
                .When(h => h is { UnderRadiotherapy: false, UnderChemotherapy: false })
                .WithMessage("The care team’s word is asked for only under treatment.");
        }
    }
}
