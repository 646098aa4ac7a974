using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Visits;

public sealed partial class WalkIn
{
    private const int MostFound = 8;

    /// <summary>Clients by the beginning of their names, their code, or the end of their phone number.</summary>
    public async Task<IReadOnlyList<Found>> FindClientsAsync(string typed, CancellationToken cancellation)
    {
        var whole = FindWordIndexer.Normalize(typed);
        if (whole.Length == 0)
            return [];
        await using var db = databases.Open();
        // All words must match, or all that was typed is one code or phone number.
        var ids = Owners(db, whole)
            .Union(FindWordIndexer.Words(typed).Take(3).Select(word => Owners(db, word)).Aggregate((met, next) => met.Intersect(next)));
        return await ids.Join(
                db.Clients.AsNoTracking().Where(c => c.MergedIntoId == null && c.LeftOn == null),
                id => id,
                c => c.Id,
                (_, c) => c
            )
            .OrderBy(c => c.Name)
            .Take(MostFound)
            .Select(c => new Found(c.Id, c.Name, c.Code))
            .ToListAsync(cancellation);
    }

#pragma warning disable CA1309 // It is the database that compares, and the column's collation is ordinal.
    private static IQueryable<Guid> Owners(ClinicDb db, string word)
    {
        var (below, phone) = (word + "\uffff", FindWordIndexer.ReverseDigits(word));
        var (phoneBelow, isPhone) = (phone + "\uffff", phone.Length >= 3 && phone.Length == word.Length);
        return db
            .FindWords.Where(w => w.Kind != FindWordKind.UnitSerial)
            .Where(w =>
                w.Kind != FindWordKind.ClientPhone && string.Compare(w.Word, word) >= 0 && string.Compare(w.Word, below) < 0
                || isPhone
                    && w.Kind == FindWordKind.ClientPhone
                    && string.Compare(w.Word, phone) >= 0
                    && string.Compare(w.Word, phoneBelow) < 0
            )
            .Select(w => w.SubjectId);
    }
#pragma warning restore CA1309
}
