using System.Data.Common;
using NpgsqlTypes;

namespace HairClinic.Web.Fence;

/// <summary>The one statement that tells PostgreSQL who acts; whoever opens a connection for an actor sends it first.</summary>
public static class ActorStatement
{
    public const string Sql = "select act_as($1, $2, $3, $4, $5, $6, $7, true)";

    public static void Fill(DbParameterCollection parameters, Actor actor, Instant now)
    {
        Add(actor.PracticeId, NpgsqlDbType.Uuid);
        Add(actor.Role, NpgsqlDbType.Text);
        Add(actor.Id, NpgsqlDbType.Uuid);
        Add(actor is PersonActor person ? person.Salons.ToArray() : Array.Empty<Guid>(), NpgsqlDbType.Array | NpgsqlDbType.Uuid);
        Add(actor is ClientActor client ? client.ClientId : null, NpgsqlDbType.Uuid);
        Add(now.ToDateTimeUtc(), NpgsqlDbType.TimestampTz);
        Add(SignInOf(actor), NpgsqlDbType.Uuid);

        void Add(object? value, NpgsqlDbType type) =>
            parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value, NpgsqlDbType = type });
    }

    private static Guid? SignInOf(Actor actor) => actor is ClientActor client ? client.SignInId : (actor.Author as PersonActor)?.SessionId;
}
