using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Tells of each address that opens a client's pages and was entered or taken away: a line in the access log under who did it, and a
/// letter to the old address. The database records what changed, so that no code that changes an address can forget it.
/// </summary>
/// <remarks>
/// A job does it, not the change itself: otherwise the person who changed the address could read the letter,
/// and with it the link that confirms what they entered.
/// </remarks>
public sealed class AddressChangeNotices(
    ClinicDbFactory databases,
    AccessLogStore log,
    SiteAddress site,
    IClock clock,
    IStringLocalizer<Words> words
)
{
    /// <returns>For how many clients changes were reported.</returns>
    public async Task<int> RunAsync(CancellationToken cancellation)
    {
        var clients = await UntoldAsync(cancellation);
        List<Exception> faults = [];
        foreach (var client in clients)
        {
            try
            {
                await ReportAsync(client, cancellation);
            }
            // The others' letters do not wait for one that cannot be written.
            catch (Exception e) when (!cancellation.IsCancellationRequested)
            {
                faults.Add(e);
            }
        }
        return faults.Count == 0 ? clients.Count : throw new AggregateException(faults);
    }

    private async Task<List<Guid>> UntoldAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .OpeningAddresses.Where(a => a.ToldAt == null || a.EndedAt != null && a.EndToldAt == null)
            .GroupBy(a => a.ClientId)
            .OrderBy(g => g.Min(a => a.EnteredAt))
            .Select(g => g.Key)
            .ToListAsync(cancellation);
    }

    private async Task ReportAsync(Guid client, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // Two programs on one database: the second waits here, and then finds it done.
        var all = await db
            .OpeningAddresses.FromSql($"select *, xmin from opening_addresses where client_id = {client} for update")
            .OrderBy(a => a.EnteredAt)
            .ToListAsync(cancellation);
        var reader = await ReaderAsync(db, client, cancellation);
        // A link about one record must not open two.
        var merged = await db.ClientMerges.Where(m => m.KeptId == client).MaxAsync(m => (Instant?)m.MergedAt, cancellation);
        var asked = new HashSet<string>();
        foreach (var address in all.Where(a => a.ToldAt is null))
            await ReportEnteredAsync(db, address, address.EnteredAt <= merged ? [] : all, reader, asked, cancellation);
        foreach (var address in all.Where(a => a.EndedAt is not null && a.EndToldAt is null))
            await ReportEndedAsync(db, address, all, reader, asked, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private async Task ReportEnteredAsync(
        ClinicDb db,
        OpeningAddress address,
        List<OpeningAddress> all,
        Reader reader,
        HashSet<string> asked,
        CancellationToken cancellation
    )
    {
        var now = clock.GetCurrentInstant();
        var author = await AuthorAsync(db, address.EnteredBy, address.EnteredRole, cancellation);
        var whose = address.GuardianId is null ? "their own" : "of somebody who looks after them";
        await log.NoteOnBehalfOfAsync(db, author, AccessAction.ChangedOpeningAddress, address.ClientId, address.Id, whose, cancellation);
        address.MarkTold(now);
        if (address.Opens == ClientPageAccessLevel.DatesOnly && OldOf(address, all) is { } old)
        {
            asked.Add(old.Email);
            var token = AddressConfirmationLinks.IssueToken(db, address, now);
            db.WorkItems.Add(WorkItemFactory.SendLetter(Ask(address, old.Email, token, reader), now));
        }
    }

    private async Task ReportEndedAsync(
        ClinicDb db,
        OpeningAddress address,
        List<OpeningAddress> all,
        Reader reader,
        HashSet<string> asked,
        CancellationToken cancellation
    )
    {
        var now = clock.GetCurrentInstant();
        if (!all.Exists(a => a != address && a.GuardianId == address.GuardianId && a.EnteredAt >= address.EndedAt))
        {
            var author = await AuthorAsync(db, address.EndedBy, address.EndedRole, cancellation);
            await log.NoteOnBehalfOfAsync(
                db,
                author,
                AccessAction.ChangedOpeningAddress,
                address.ClientId,
                address.Id,
                "taken away",
                cancellation
            );
        }
        address.MarkEndTold(now);
        if (asked.Add(address.Email))
            db.WorkItems.Add(WorkItemFactory.SendLetter(Part(address, reader), now));
    }

    /// <summary>
    /// The address that may say whether a new one is right: the client's own that was confirmed last, because unconfirmed
    /// addresses could otherwise confirm themselves; for a guardian of somebody who has none, the guardian's own.
    /// </summary>
    private static OpeningAddress? OldOf(OpeningAddress entered, List<OpeningAddress> all) =>
        Last(all.Where(a => a.GuardianId is null)) ?? Last(all.Where(a => a.GuardianId == entered.GuardianId));

    private static OpeningAddress? Last(IEnumerable<OpeningAddress> addresses) =>
        addresses
            .Where(a => a.ConfirmedAt is not null)
            .OrderBy(a => a.EndedAt ?? Instant.MaxValue)
            .ThenBy(a => a.EnteredAt)
            .LastOrDefault();

    private static async Task<Reader> ReaderAsync(ClinicDb db, Guid client, CancellationToken cancellation) =>
        await (
            from c in db.Clients
            where c.Id == client
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select new Reader(
                db.ClientPreferences.Where(p => p.ClientId == client).Select(p => p.Language).FirstOrDefault()
                    ?? db.PracticeSettings.Select(s => s.Culture).FirstOrDefault(),
                salon.Phone
            )
        ).SingleAsync(cancellation);

    private static async Task<Actor> AuthorAsync(ClinicDb db, Guid? by, string? role, CancellationToken cancellation)
    {
        if (by is not { } person)
            return db.Actor!;
        if (!Enum.TryParse<StaffRole>(role, out var acted))
            acted = await db.People.Where(p => p.Id == person).Select(p => p.Role).SingleOrDefaultAsync(cancellation);
        return new PersonActor(db.PracticeId, person, acted, [], AtSalon: null);
    }

    // Without the site's own address the letter is sent all the same, without a link.
    private Letter Ask(OpeningAddress address, string to, string token, Reader reader) =>
        CultureRunner.WithCulture(reader.Language, () => Ask(to, token, reader.Phone)) with
        {
            Kind = LetterKind.ConfirmAddress,
            For = address.ClientId,
        };

    private Letter Part(OpeningAddress address, Reader reader) =>
        CultureRunner.WithCulture(reader.Language, () => Part(address.Email, reader.Phone)) with
        {
            Kind = LetterKind.AddressEnded,
            For = address.ClientId,
        };

    private Letter Ask(string to, string token, string? phone) =>
        new(
            to,
            words["About your e-mail address"],
            site.Url is not { } home
                ? $"""
                {words["Somebody noted another e-mail address for seeing your dates. If you did not ask for that, tell us."]}

                {RingUs(phone)}
                """
                : $"""
                {words["Somebody noted another e-mail address for seeing your dates. Please say whether that is right:"]}

                {home}/my-hair/my-new-address?token={token}

                {words[
                    "The link works once, for {0} days. If you did not ask for it, say so there.",
                    (int)OpeningAddress.LinkLifetime.TotalDays
                ]}
                {RingUs(phone)}
                """
        );

    private Letter Part(string to, string? phone) =>
        new(
            to,
            words["About your e-mail address"],
            $"""
            {words["This e-mail address opens no dates any more: somebody changed that. If you asked for it, there is nothing to do."]}

            {RingUs(phone)}
            """
        );

    private string RingUs(string? phone) =>
        phone is null ? words["If you have a question, get in touch with us."] : words["If something is wrong, ring {0}.", phone];

    private sealed record Reader(string? Language, string? Phone);
}
