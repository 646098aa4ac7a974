using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Features.Clients;

public sealed partial class MergeClients
{
    /// <summary>Moves back exactly what the merge moved; what was added since stays with the record that was kept.</summary>
    /// <exception cref="Refusal">
    /// Undone already, the kept record was merged on, or a unit that moved was bonded anew since.
    /// </exception>
    public Task<Outcome> UndoAsync(Guid key, Undo input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(UndoAsync), input, db => UndoAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> UndoAsync(ClinicDb db, Undo input, CancellationToken cancellation)
    {
        var merge =
            await db.ClientMerges.SingleOrDefaultAsync(m => m.Id == input.MergeId, cancellation)
            ?? throw new Refusal("This merge is not there any more.");
        var kept =
            await db.Clients.UnmergedById(merge.KeptId).SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("The record that was kept was merged into another since. Undo that merge first.");
        var folded =
            await db.Clients.SingleOrDefaultAsync(c => c.Id == merge.FoldedId, cancellation)
            ?? throw new Refusal("This merge is not there any more.");
        RefuseToOthers(kept, folded);
        await RefuseIfWornSinceAsync(db, merge.Moved["hair_systems"], merge.Moved["bonds"], cancellation);

        merge.Undo(clock.GetCurrentInstant());
        folded.UndoMerge();
        var moved = 0;
        foreach (var rows in ClientRowTransfer.All)
            moved += (await rows.MoveAsync(db, kept.Id, folded.Id, merge.Moved[rows.Table], cancellation)).Count;

        // The kept record may have been renamed since, which drops words both had in common.
        var words = db.FindWords.Local.Where(w => w.SubjectId == folded.Id).Select(w => (w.Kind, w.Word)).ToHashSet();
        db.FindWords.AddRange(FindWordIndexer.For(folded).Where(w => !words.Contains((w.Kind, w.Word))));

        var now = clock.GetCurrentInstant();
        db.WorkItems.AddRange(WorkItemFactory.RefreshDueDates(kept.Id, now), WorkItemFactory.RefreshDueDates(folded.Id, now));
        return new Outcome(kept.Id, moved);
    }

    private static async Task RefuseIfWornSinceAsync(ClinicDb db, List<Guid> units, List<Guid> bonds, CancellationToken cancellation)
    {
        var serial = await db
            .Bonds.Where(b => units.Contains(b.HairSystemId) && !bonds.Contains(b.Id))
            .Join(db.HairSystems, b => b.HairSystemId, u => u.Id, (_, u) => u.Serial)
            .FirstOrDefaultAsync(cancellation);
        if (serial is not null)
            throw new Refusal("Unit {0} was bonded after the merge, so it cannot go back to another head.", serial);
    }

    public sealed record Undo(Guid MergeId);
}
