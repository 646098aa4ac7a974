using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>Makes two records of one person one: everything moves to the record that stays, and can be moved back.</summary>
public sealed partial class MergeClients(
    ClinicDbFactory databases,
    DuplicateSearch search,
    WriteOnce writes,
    CurrentActor current,
    IClock clock
)
{
    /// <param name="otherCode">A record somebody named by its code; null to see only what was found.</param>
    /// <returns>Null: not there, or not of a salon of theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, string? otherCode, CancellationToken cancellation)
    {
        var person = current.Person;
        await using var db = databases.Open();
        var here = await Sides(db, db.Clients.UnmergedById(clientId).AtHomeInSalonsOf(person)).SingleOrDefaultAsync(cancellation);
        if (here is null)
            return null;
        var duplicates = await search.FindAsync(clientId, cancellation);
        var ids = duplicates.Select(d => d.ClientId).ToList();
        var code = otherCode?.Trim();
        var others = await Sides(
                db,
                db.Clients.AtHomeInSalonsOf(person)
                    .Where(c => c.Id != clientId && c.MergedIntoId == null && (ids.Contains(c.Id) || c.Code == code))
            )
            .OrderBy(s => s.Code)
            .ToListAsync(cancellation);
        var past = await (
            from merge in db.ClientMerges
            where merge.KeptId == clientId && merge.UndoneAt == null
            join folded in db.Clients on merge.FoldedId equals folded.Id
            join merger in db.People on merge.MergedBy equals merger.Id into people
            from merger in people.DefaultIfEmpty()
            orderby merge.MergedAt descending
            select new Past(merge.Id, folded.Code, folded.Name, folded.Phone, merge.MergedAt, merger == null ? null : merger.Name)
        ).ToListAsync(cancellation);
        return new Screen(
            here,
            [.. others.Select(side => new Candidate(side, duplicates.SingleOrDefault(d => d.ClientId == side.Id)))],
            code is { Length: > 0 } && others.All(o => o.Code != code),
            past,
            here.Zone
        );
    }

    /// <exception cref="Refusal">Both wear a unit, or one of the two is not there, not of their salons or merged already.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(MergeClients), input, db => MergeAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, BondMap.OpenPerHead))
        {
            throw new Refusal(BothWear);
        }
        catch (DbUpdateException e) when (SlotSaveErrors.FindClash(e) is SlotClash.Client)
        {
            throw new Refusal("Somebody booked this client a moment ago, so that two visits would overlap. Merge once more.");
        }
    }

    private const string BothWear =
        "Both records have a unit on the head today, and one head wears one. Log the take-down of the one that is not there any more, then merge.";

    private async Task<Outcome> MergeAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        var both = await db.Clients.Where(c => c.Id == input.KeptId || c.Id == input.FoldedId).ToListAsync(cancellation);
        var kept = both.SingleOrDefault(c => c.Id == input.KeptId);
        var folded = both.SingleOrDefault(c => c.Id == input.FoldedId);
        if (kept is null || folded is null)
            throw new Refusal("One of the two records is not there any more. Open the client again.");
        RefuseToOthers(kept, folded);
        await RefuseWithoutHealthAsync(db, kept.Id, folded.Id, cancellation);
        folded.MergeInto(kept);
        var wearing = await db.Bonds.CountAsync(
            b => (b.ClientId == kept.Id || b.ClientId == folded.Id) && b.RemovedOn == null,
            cancellation
        );
        if (wearing > 1)
            throw new Refusal(BothWear);

        var merge = new ClientMerge(key, kept.Id, folded.Id, clock.GetCurrentInstant(), current.Person.PersonId);
        var twice = await SettleVisitsAsync(db, kept.Id, folded.Id, cancellation);
        var moved = 0;
        foreach (var rows in ClientRowTransfer.All)
            moved += merge.RecordMovedRows(rows.Table, await rows.MoveAsync(db, folded.Id, kept.Id, only: null, cancellation));
        db.ClientMerges.Add(merge);
        db.WorkItems.Add(WorkItemFactory.RefreshDueDates(kept.Id, clock.GetCurrentInstant()));
        return new Outcome(kept.Id, moved) { Twice = twice };
    }

    // Nobody chose that one person has two visits at once, so neither is lost: those that come stand aside, and it is told.
    private static async Task<IReadOnlyList<Twice>> SettleVisitsAsync(ClinicDb db, Guid kept, Guid folded, CancellationToken cancellation)
    {
        var visits = await db.Visits.Where(v => (v.ClientId == kept || v.ClientId == folded) && v.HoldsClient).ToListAsync(cancellation);
        var aside = ClientOccupancyRule.ReleaseOverlapping(visits.Where(v => v.ClientId == kept), visits.Where(v => v.ClientId == folded));
        if (aside.Count == 0)
            return [];
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        return [.. aside.Select(pair => new Twice(Shown(pair.Holds), Shown(pair.Aside)))];

        Booked Shown(Visit visit) => new(visit.Id, visit.StartsAt, visit.EndsAt, salons[visit.SalonId].Name, salons[visit.SalonId].Zone);
    }

    private void RefuseToOthers(Client one, Client other)
    {
        if (
            !StaffPermissions.MayManageClient(current.Person, one.HomeSalonId)
            || !StaffPermissions.MayManageClient(current.Person, other.HomeSalonId)
        )
            throw new Refusal("Records are merged, and a merge is undone, only where both have their home salon. Ask an owner.");
    }

    // What has to be asked about before a product is used follows from health answers, and moves with the record.
    private async Task RefuseWithoutHealthAsync(ClinicDb db, Guid kept, Guid folded, CancellationToken cancellation)
    {
        if (
            !StaffPermissions.MayReadHealth(current.Person)
            && await db.Clearances.AnyAsync(c => c.ClientId == kept || c.ClientId == folded, cancellation)
        )
            throw new Refusal(
                "There is something in these records to ask about before bonding. An owner, a manager or a stylist merges them."
            );
    }

    private static IQueryable<Side> Sides(ClinicDb db, IQueryable<Client> clients) =>
        from client in clients.AsNoTracking()
        join salon in db.Salons on client.HomeSalonId equals salon.Id
        select new Side
        {
            Id = client.Id,
            Code = client.Code,
            Name = client.Name,
            Phone = client.Phone,
            Email = client.Email,
            BirthDate = client.BirthDate,
            Note = client.Note,
            Salon = salon.Name,
            Zone = salon.Zone,
            Units = db.HairSystems.Count(u => u.ClientId == client.Id),
            Bonds = db.Bonds.Count(b => b.ClientId == client.Id),
            Visits = db.Visits.Count(v => v.ClientId == client.Id),
            LastVisit = db.Visits.Where(v => v.ClientId == client.Id).Max(v => (LocalDate?)v.Day),
            Wears = db.Bonds.Any(b => b.ClientId == client.Id && b.RemovedOn == null),
        };
}
