using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>One tap says where a visit stands: arrived, in the chair, did not come, or that the last tap was a slip.</summary>
public sealed class ChangeState(WriteOnce writes, SlotSearch slots, CurrentActor current, IClock clock)
{
    /// <exception cref="Refusal">It cannot go there from where it is, or its place or its client is taken by now.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit in the meantime.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        Visit? visit = null;
        var client = "";
        try
        {
            return await writes.RunAsync(
                key,
                nameof(ChangeState),
                input,
                async db =>
                {
                    var found =
                        await db
                            .Visits.Where(v => v.Id == input.VisitId && current.Person.Salons.Contains(v.SalonId))
                            .Select(v => new
                            {
                                Visit = v,
                                v.Segments,
                                Salon = db.Salons.First(s => s.Id == v.SalonId),
                                Client = db.Clients.First(c => c.Id == v.ClientId).Name,
                            })
                            .SingleOrDefaultAsync(cancellation)
                        ?? throw new Refusal("This visit is not in the book.");
                    (visit, client) = (found.Visit, found.Client);
                    WriteOnce.ExpectVersion(db, visit, input.Version);
                    Apply(visit, input.To, found.Salon, clock.GetCurrentInstant());
                    return new Outcome(visit.State);
                },
                cancellation
            );
        }
        catch (Exception e) when (visit is not null && SlotSaveErrors.FindClash(e) is SlotClash.Client)
        {
            var clash = await slots.FindClientClashAsync(visit.ClientId, visit.StartsAt, visit.EndsAt, visit.Id, cancellation);
            throw (clash ?? new(Visit: null)).ToRefusal(client);
        }
        catch (Exception e) when (SlotSaveErrors.FindClash(e) is not null)
        {
            throw new Refusal("Its place was given to somebody else. Book a new visit, or move this one.");
        }
    }

    private static void Apply(Visit visit, Step to, Salon salon, Instant now)
    {
        switch (to)
        {
            case Step.Arrive:
                visit.Arrive(salon.DayOf(now));
                break;
            case Step.Begin:
                visit.Begin(salon.DayOf(now));
                break;
            case Step.DidNotCome:
                visit.MarkDidNotCome(now);
                break;
            default:
                visit.UndoStateChange();
                break;
        }
    }

    public enum Step
    {
        Arrive,
        Begin,
        DidNotCome,
        TakeBack,
    }

    public sealed record Input(Guid VisitId, uint Version, Step To);

    public sealed record Outcome(VisitState State);
}
