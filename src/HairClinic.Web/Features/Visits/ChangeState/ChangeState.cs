using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Visits.ChangeState;

/// <summary>One tap says where a visit stands: arrived, in the chair, did not come, or that the last tap was a slip.</summary>
public sealed class ChangeState(WriteOnce writes, CurrentActor current)
{
    /// <exception cref="Refusal">It cannot go there from where it is, or its place is taken by now.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit in the meantime.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(
                key,
                nameof(ChangeState),
                input,
                async db =>
                {
                    var visit =
                        await db
                            .Visits.Include(v => v.Segments)
                            .SingleOrDefaultAsync(v => v.Id == input.VisitId && current.Person.Salons.Contains(v.SalonId), cancellation)
                        ?? throw new Refusal("This visit is not in the book.");
                    WriteOnce.Expect(db, visit, input.Version);
                    Apply(visit, input.To);
                    return new Outcome(visit.State);
                },
                cancellation
            );
        }
        catch (Exception e) when (SlotClashes.In(e) is not null)
        {
            throw new Refusal("Its place was given to somebody else. Book a new visit, or move this one.");
        }
    }

    private static void Apply(Visit visit, Step to)
    {
        switch (to)
        {
            case Step.Arrive:
                visit.Arrive();
                break;
            case Step.Begin:
                visit.Begin();
                break;
            case Step.DidNotCome:
                visit.MarkDidNotCome();
                break;
            default:
                visit.TakeBack();
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
