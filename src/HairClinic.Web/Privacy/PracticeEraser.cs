using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.EntityFrameworkCore.Metadata;

namespace HairClinic.Web.Privacy;

/// <summary>
/// Takes a whole practice out of the database, in one transaction: every fenced row, its accounts and sign-in
/// links, and that it existed. The tables come from the model, so a new one is never forgotten. Only the access log stays:
/// it holds only ids, and no line of it can be removed.
/// </summary>
public static class PracticeEraser
{
    /// <param name="db">Acting for the practice to be erased: row security lets it reach no other.</param>
    /// <returns>How many rows went.</returns>
    public static async Task<int> EraseAsync(ClinicDb db, CancellationToken cancellation)
    {
        var practice = db.PracticeId;
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var gone = 0;
        // Work behind the screens may add a row to a table that was emptied already: a second pass finds it.
        for (int pass = int.MaxValue; pass > 0; gone += pass)
        {
            pass = 0;
            // Consents and erasures are only added to; the database itself drops those of an invented practice.
            pass += await db.Database.SqlQuery<int>($"select forget_the_invented() as \"Value\"").SingleAsync(cancellation);
            foreach (var table in Tables(db.Model).Except(AppendOnlyTables(db.Model)))
                pass += await db.Database.ExecuteSqlRawAsync(DeleteFrom(table), [practice], cancellation);
        }
        gone += await db.SignInLinks.Where(l => l.PracticeId == practice).ExecuteDeleteAsync(cancellation);
        gone += await db.Users.Where(u => u.PracticeId == practice).ExecuteDeleteAsync(cancellation);
        gone += await db.Practices.Where(p => p.Id == practice).ExecuteDeleteAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return gone;
    }

    /// <summary>What is only ever added to.</summary>
    public static IEnumerable<string> AppendOnlyTables(IModel model) =>
        new[] { typeof(AccessNote), typeof(AccessHead), typeof(Consent), typeof(ConsentText), typeof(Erasure) }.Select(t =>
            model.FindEntityType(t)!.GetTableName()!
        );

    /// <summary>Fenced tables, those that refer to others first.</summary>
    /// <exception cref="InvalidOperationException">Tables refer to one another in a circle.</exception>
    public static IReadOnlyList<string> Tables(IModel model)
    {
        var left = model.GetEntityTypes().Where(t => t.ClrType.IsSubclassOf(typeof(PracticeOwned))).ToHashSet();
        var order = new List<string>(left.Count);
        while (left.Count > 0)
        {
            var free = left.Where(t =>
                    !t.GetReferencingForeignKeys().Any(k => k.DeclaringEntityType != t && left.Contains(k.DeclaringEntityType))
                )
                .OrderBy(t => t.GetTableName(), StringComparer.Ordinal)
                .ToList();
            if (free.Count == 0)
                throw new InvalidOperationException(
                    $"These tables refer to one another in a circle: {string.Join(", ", left.Select(t => t.GetTableName()))}."
                );
            order.AddRange(free.Select(t => t.GetTableName()!));
            left.ExceptWith(free);
        }
        return order;
    }

    private static string DeleteFrom(string table) => $"delete from {table} where practice_id = {{0}}";
}
