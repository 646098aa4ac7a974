using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Settings;

/// <summary>One hold window; every open bond's due date is worked out anew after a change.</summary>
public sealed class EditHoldWindow(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var bases = await db
            .BaseMaterials.Where(b => !b.Retired)
            .OrderBy(b => b.Name)
            .Select(b => new Choice(b.Id, b.Name))
            .ToListAsync(cancellation);
        var adhesives = await db
            .Products.Where(p => !p.Retired && (p.Kind == ProductKind.Adhesive || p.Kind == ProductKind.Tape))
            .OrderBy(p => p.Name)
            .Select(p => new Choice(p.Id, p.Name))
            .ToListAsync(cancellation);
        if (id is null)
            return new Screen(new Input { EarliestWeeks = 4, LatestWeeks = 6 }, bases, adhesives);
        var rule = await db.HoldWindowRules.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation);
        return rule is null ? null : new Screen(Input.Of(rule), bases, adhesives);
    }

    /// <exception cref="Refusal">There is a window for this already, or no window would stand for everything else.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditHoldWindow), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "hold_window_rules"))
        {
            throw new Refusal("There is a window for this base, adhesive and attachment already. Change that one.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        HoldWindowRule rule;
        if (input.Id is { } id)
        {
            // Of settings only a window is taken out of the book altogether.
            rule =
                await db.HoldWindowRules.SingleOrDefaultAsync(r => r.Id == id, cancellation)
                ?? throw new Refusal("Someone else took this window out meanwhile, so it cannot be changed any more.");
            var stoodForAll = rule is { BaseMaterialId: null, AdhesiveId: null, Attachment: null };
            var standsForAll = !input.Retire && input is { BaseMaterialId: null, AdhesiveId: null, Attachment: null };
            if (stoodForAll && !standsForAll)
                throw new Refusal("This window stands for everything no other names. Its weeks can change, but it stays.");
            Guarded.Hold(db, rule, input.Version);
        }
        else
        {
            rule = new HoldWindowRule(Guid.CreateVersion7(), input.EarliestWeeks ?? 0, input.LatestWeeks ?? 0);
            db.HoldWindowRules.Add(rule);
        }
        rule.Edit(input.BaseMaterialId, input.AdhesiveId, input.Attachment, input.EarliestWeeks ?? 0, input.LatestWeeks ?? 0);
        if (input.Retire)
            // Nothing refers to a window: bonds keep their dates and reasons, so the row can go.
            db.HoldWindowRules.Remove(rule);
        db.WorkItems.Add(WorkItems.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        return new Outcome(rule.Id);
    }

    public sealed record Screen(Input Input, IReadOnlyList<Choice> Bases, IReadOnlyList<Choice> Adhesives);

    public sealed record Choice(Guid Id, string Name);

    public sealed record Input : IEditable
    {
        [FromBook]
        public Guid? Id { get; set; }

        [FromBook]
        public uint Version { get; set; }

        [OfTheForm]
        public bool Retire { get; set; }

        [Field("Base", Nothing = "any base")]
        public Guid? BaseMaterialId { get; set; }

        [Field("Adhesive", Nothing = "any adhesive")]
        public Guid? AdhesiveId { get; set; }

        [Field("Attachment", Nothing = "any attachment")]
        public Attachment? Attachment { get; set; }

        [Field("Earliest week")]
        public int? EarliestWeeks { get; set; }

        [Field("Latest week")]
        public int? LatestWeeks { get; set; }

        public static Input Of(HoldWindowRule rule) =>
            new()
            {
                Id = rule.Id,
                Version = rule.Version,
                BaseMaterialId = rule.BaseMaterialId,
                AdhesiveId = rule.AdhesiveId,
                Attachment = rule.Attachment,
                EarliestWeeks = rule.EarliestWeeks,
                LatestWeeks = rule.LatestWeeks,
            };
    }

    public sealed record Outcome(Guid RuleId);
}
