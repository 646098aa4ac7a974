using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// Somebody of another salon stands at the desk: their home salon is asked to let this one in. The ask is only taken down here, and
/// answered by the work loop: the answer is the same whether there is such a client or not, and takes as long, so that nobody is found
/// by guessing.
/// </summary>
public sealed class RequestClientAccess(WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <exception cref="Refusal">The person works in no salon.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        var person = current.Person;
        var salon = person.AtSalon ?? throw new Refusal("Choose the salon you are at first.");
        return await writes.RunAsync(
            key,
            nameof(RequestClientAccess),
            input,
            db =>
            {
                var ask = new RequestClientAccessBody(key, salon, person.PersonId, input.CodeOrPhone, input.Because);
                db.WorkItems.Add(WorkItemFactory.RequestClientAccess(ask, clock.GetCurrentInstant()));
                return Task.FromResult(new Outcome());
            },
            cancellation
        );
    }

    public sealed record Input
    {
        /// <summary>The whole of either.</summary>
        public string CodeOrPhone { get; set; } = "";

        public string Because { get; set; } = "";
    }

    public sealed record Outcome;
}
