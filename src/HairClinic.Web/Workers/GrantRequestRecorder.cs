using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Workers;

/// <summary>
/// Looks for the client whom another salon asks for and notes it for their home salon. It is done behind the screens, so that whoever
/// asked can tell neither by the answer nor by how long it took whether there is such a client.
/// </summary>
public static class GrantRequestRecorder
{
    /// <param name="db">A job's: it looks through the whole practice.</param>
    /// <param name="askedAt">When it was asked.</param>
    public static async Task RecordAsync(ClinicDb db, RequestClientAccessBody ask, Instant askedAt, CancellationToken cancellation)
    {
        if (await db.ClientRequests.AnyAsync(r => r.Id == ask.Id, cancellation))
            return;
        if (await FindAsync(db, ask.CodeOrPhone.Trim(), cancellation) is not { } clientId)
            return;
        db.ClientRequests.Add(new ClientRequest(ask.Id, clientId, ask.SalonId, ask.AskedBy, askedAt, ask.Because));
        await db.SaveChangesAsync(cancellation);
    }

    // A code just as it is, else as people write it down, where that leads to one client only; or a whole number as it is written
    // where any salon is: at home their client would write it so.
    private static async Task<Guid?> FindAsync(ClinicDb db, string typed, CancellationToken cancellation)
    {
        var clients = db.Clients.Where(c => c.MergedIntoId == null);
        if (await clients.Where(c => c.Code == typed).Select(c => (Guid?)c.Id).SingleOrDefaultAsync(cancellation) is { } exact)
            return exact;
        var word = FindWordIndexer.Normalize(typed);
        var spelt = await db
            .FindWords.Where(w => w.Kind == FindWordKind.ClientCode && w.Word == word)
            .Join(clients, w => w.SubjectId, c => c.Id, (_, c) => c.Id)
            .Distinct()
            .Take(2)
            .ToListAsync(cancellation);
        if (spelt is [var only])
            return only;
        var phones = await PhonesAsync(db, typed, cancellation);
        return phones.Count == 0
            ? null
            : await clients
                .Where(c => phones.Contains(c.Phone!))
                .OrderBy(c => c.Id)
                .Select(c => (Guid?)c.Id)
                .FirstOrDefaultAsync(cancellation);
    }

    private static async Task<List<string>> PhonesAsync(ClinicDb db, string typed, CancellationToken cancellation)
    {
        var region = await db.PracticeSettings.Select(s => s.Region).SingleAsync(cancellation);
        var zones = await db.Salons.Select(s => s.Zone).Distinct().ToListAsync(cancellation);
        return
        [
            .. zones
                .Select(zone => PhoneNumberParser.RegionForZone(zone, region))
                .Distinct()
                .Select(r => new PhoneNumberParser(r).Parse(typed, out var written) == PhoneFault.None ? written : null)
                .OfType<string>()
                .Distinct(),
        ];
    }
}
