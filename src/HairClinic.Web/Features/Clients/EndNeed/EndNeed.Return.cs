namespace HairClinic.Web.Features.Clients;

public sealed partial class EndNeed
{
    /// <summary>They are a client again. Orders and visits that were called off stay so.</summary>
    /// <exception cref="Refusal">They never left, or are not there any more.</exception>
    /// <exception cref="Data.Writes.OvertakenException">Somebody changed the client at the same moment.</exception>
    public Task<bool> ReturnAsync(Guid key, Back input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(ReturnAsync),
            input,
            async db =>
            {
                var client = await RequireAsync(db, input.ClientId, input.Version, cancellation);
                client.Return();
                return true;
            },
            cancellation
        );
}
