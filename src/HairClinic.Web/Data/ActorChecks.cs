namespace HairClinic.Web.Data;

/// <summary>What only the database knows about the current actor, asked inside their own fence.</summary>
public static class ActorChecks
{
    /// <summary>Whether the actor may read confidential data: clients only by a confirmed address. Ask this before reading past a client's fence.</summary>
    public static Task<bool> MayReadConfidentialAsync(this ClinicDb db, CancellationToken cancellation) =>
        db.Database.SqlQuery<bool>($"select app_opens_all() as \"Value\"").SingleAsync(cancellation);

    /// <summary>Those of these clients whose address another member of staff could confirm.</summary>
    public static async Task<IReadOnlySet<Guid>> ClientsWhoseAddressOthersMayConfirmAsync(
        this ClinicDb db,
        Guid[] clients,
        Guid but,
        CancellationToken cancellation
    ) =>
        clients.Length == 0
            ? new HashSet<Guid>()
            : await db
                .Database.SqlQuery<Guid>($"select c as \"Value\" from unnest({clients}) c where others_may_confirm(c, {but})")
                .ToHashSetAsync(cancellation);
}
