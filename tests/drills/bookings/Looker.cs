using HairClinic.Domain.Clients;
using Npgsql;

namespace HairClinic.BookingDrill;

/// <summary>Finds a visit to write on, as a person would find one on a screen.</summary>
internal sealed class Looker(Clinic clinic)
{
    /// <param name="client">Whose; null for any of <paramref name="among"/>.</param>
    public async Task<(Guid Visit, Guid Client)?> AnyVisitAsync(Guid? client, IReadOnlyList<Client> among)
    {
        try
        {
            await using var command = clinic.Sql.CreateCommand(
                "select id, client_id from visits where client_id = any ($1) and state = 'Booked' order by random() limit 1"
            );
            command.Parameters.Add(new NpgsqlParameter<Guid[]> { TypedValue = client is { } one ? [one] : [.. among.Select(c => c.Id)] });
            await using var reader = await command.ExecuteReaderAsync();
            return await reader.ReadAsync() ? (reader.GetGuid(0), reader.GetGuid(1)) : null;
        }
        catch (Exception e) when (Faults.AreTransient(e))
        {
            return null;
        }
    }
}
