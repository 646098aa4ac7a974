using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>What the workshop asks about a unit, and what it was answered: it waits until then.</summary>
public sealed class AskAboutUnit(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var unit = await db.HairSystems.AsNoTracking().SingleOrDefaultAsync(u => u.Id == unitId, cancellation);
        if (unit is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        var open = await db
            .UnitQuestions.AsNoTracking()
            .Where(q => q.HairSystemId == unitId && q.AnsweredOn == null)
            .OrderBy(q => q.AskedOn)
            .ToListAsync(cancellation);
        return new Screen(unit.Serial, salon.DayOf(clock.GetCurrentInstant()), open);
    }

    /// <exception cref="Refusal">The unit or question is not there, or was answered already.</exception>
    /// <exception cref="OvertakenException">Someone answered it at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(AskAboutUnit),
            input,
            async db =>
            {
                var unit =
                    await db.HairSystems.AsNoTracking().SingleOrDefaultAsync(u => u.Id == input.UnitId, cancellation)
                    ?? throw new Refusal("You cannot open this unit: it belongs to another salon. Ask somebody there.");
                var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
                var on = input.On!.Value.RequireReached(salon.DayOf(clock.GetCurrentInstant()));
                if (input.QuestionId is not { } asked)
                {
                    db.UnitQuestions.Add(new UnitQuestion(key, unit.Id, on, input.Text));
                    return new Outcome(unit.Serial);
                }
                var question =
                    await db.UnitQuestions.SingleOrDefaultAsync(q => q.Id == asked && q.HairSystemId == unit.Id, cancellation)
                    ?? throw new Refusal("This question is not in the book. Open the unit again.");
                question.SetAnswer(on, input.Text);
                return new Outcome(unit.Serial);
            },
            cancellation
        );

    /// <param name="Open">Not answered yet.</param>
    public sealed record Screen(string Serial, LocalDate Today, IReadOnlyList<UnitQuestion> Open);

    public sealed record Input
    {
        public Guid UnitId { get; set; }

        /// <summary>The question that is answered; null asks a new one.</summary>
        public Guid? QuestionId { get; set; }

        public LocalDate? On { get; set; }
        public string Text { get; set; } = "";
    }

    public sealed record Outcome(string Serial);
}

public sealed class AskAboutUnitRules : AbstractValidator<AskAboutUnit.Input>
{
    public AskAboutUnitRules()
    {
        RuleFor(x => x.On).NotNull().WithMessage("Choose the day.");
        RuleFor(x => x.Text).NotEmpty().WithMessage("Write it down.").MaximumLength(1000).WithMessage("A note has at most 1,000 letters.");
    }
}
