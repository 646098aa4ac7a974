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

    /// <summary>Forgets that the bond lifted, as if it had been made anew.</summary>
    public async Task MendLiftAsync(Guid client)
    {
        try
        {
            await using var command = clinic.Sql.CreateCommand(
                """
                update bonds set lifted_on = null, lift_reported_on = null, lift_spot_fixed = null, lift_zone = null
                where client_id = $1 and lift_reported_on is not null
                """
            );
            command.Parameters.Add(new NpgsqlParameter<Guid> { TypedValue = client });
            await command.ExecuteNonQueryAsync();
        }
        catch (Exception e) when (Faults.AreTransient(e)) { }
    }
}
