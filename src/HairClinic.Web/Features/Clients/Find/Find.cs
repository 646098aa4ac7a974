using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// Finds clients from every screen: by name, code, the end of a phone number, or the serial of a unit. It looks only among those whom
/// the asker may open: whether another salon knows somebody it neither says nor lets guess, however often it is asked.
/// </summary>
public sealed class Find(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public const int MostResults = 20;

    public async Task<Screen> OpenAsync(string? typed, CancellationToken cancellation)
    {
        var sought = SearchTerms.Parse(typed);
        if (sought.IsEmpty)
            return Screen.Nothing;
        await using var db = databases.Open();
        if (sought.MayBeWholePhone)
            sought = sought.WithWholePhone(await PhoneParser.LoadNumberingAsync(db, current.Person.AtSalon, cancellation));
        var matching = Matching(db, sought);
        var exactly = Owners(
            db,
            db.FindWords.Where(w => w.Kind != FindWordKind.ClientName && w.Kind != FindWordKind.ClientPhone && w.Word == sought.Whole)
        );

        var rows = await (
            from client in matching
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            // One at most on each head: a join, as the first of several would be numbered over everybody's.
            join bond in db.Bonds.Where(b => b.RemovedOn == null) on client.Id equals bond.ClientId into heads
            from head in heads.DefaultIfEmpty()
            let exact = exactly.Contains(client.Id)
            orderby exact descending, client.LeftOn == null descending, client.Name, client.Id
            select new
            {
                client.Id,
                client.Code,
                client.Name,
                client.CalledAs,
                client.LeftOn,
                Salon = salon.Name,
                salon.Zone,
                Exact = exact,
                DueOn = head == null ? null : (LocalDate?)head.DueOn,
                ClosesOn = head == null ? null : (LocalDate?)head.ClosesOn,
                Lifted = head != null && head.Lift != null,
            }
        )
            .Take(MostResults + 1)
            .ToListAsync(cancellation);

        var mine = current.Person.Salons;
        var others = await db
            .PracticeSettings.Select(_ => new
            {
                Salons = db.Salons.Any(s => !mine.Contains(s.Id)),
                Units = db
                    .HairSystems.Where(u => db.FindWords.Any(w => w.SubjectId == u.Id && w.Word == sought.Whole))
                    .Join(db.UnitKinds, u => u.UnitKindId, k => k.Id, (u, k) => new FoundUnit(u.Id, u.Serial, k.Name, u.ClientId == null))
                    .ToList(),
            })
            .SingleAsync(cancellation);

        var now = clock.GetCurrentInstant();
        return new Screen(
            [
                .. rows.Take(MostResults)
                    .Select(r => new Row(
                        r.Id,
                        r.Code,
                        r.Name,
                        r.CalledAs,
                        r.LeftOn,
                        r.Salon,
                        now.InZone(DateTimeZoneProviders.Tzdb[r.Zone]).Date,
                        r.DueOn,
                        r.ClosesOn,
                        r.Lifted,
                        r.Exact
                    )),
            ],
            rows.Count > MostResults,
            others.Salons && current.Person.StaffRole is not (StaffRole.Owner or StaffRole.Trainee),
            others.Units
        )
        {
            OwnVisitsOnly = current.Person.StaffRole == StaffRole.Trainee,
        };
    }

    // All words must match, each on whatever it matches; or all that was typed is one code, serial or phone number.
    private static IQueryable<Client> Matching(ClinicDb db, SearchTerms sought)
    {
        var ids = MetBy(db, sought.Whole, sought.PhoneEnd);
        if (sought.WholePhone is { } phone)
            ids = ids.Union(db.FindWords.Where(w => w.Kind == FindWordKind.ClientPhone && w.Word == phone).Select(w => w.SubjectId));
        if (sought.Words.Count > 1)
            ids = ids.Union(MetByAll(db, sought.Words));
        return ids.Distinct().Join(db.Clients.AsNoTracking().Where(c => c.MergedIntoId == null), id => id, c => c.Id, (_, c) => c);
    }

    // Whoever the longest word leads to, the fewest, is asked for the others: a single letter would lead to half of the book.
    private static IQueryable<Guid> MetByAll(ClinicDb db, IReadOnlyList<string> words)
    {
        var longest = words.MaxBy(w => w.Length)!;
        var met = MetBy(db, longest, SearchTerms.ParseReversedPhoneEnd(longest));
        foreach (var word in words.Where(w => w != longest))
        {
            var beginning = Beginning(db, word, SearchTerms.ParseReversedPhoneEnd(word));
            met = met.Where(id =>
                beginning.Any(w => w.SubjectId == id)
                || db.HairSystems.Any(u => u.ClientId == id && beginning.Any(w => w.Kind == FindWordKind.UnitSerial && w.SubjectId == u.Id))
            );
        }
        return met;
    }

    private static IQueryable<Guid> MetBy(ClinicDb db, string word, string? phoneEnd) => Owners(db, Beginning(db, word, phoneEnd));

#pragma warning disable CA1309 // It is the database that compares, and the column's collation is ordinal.
    private static IQueryable<FindWord> Beginning(ClinicDb db, string word, string? phoneEnd)
    {
        var (from, below) = PrefixRange.Covering(word);
        if (phoneEnd is null)
            return db.FindWords.Where(w =>
                w.Kind != FindWordKind.ClientPhone && string.Compare(w.Word, from) >= 0 && string.Compare(w.Word, below) < 0
            );
        var (phoneFrom, phoneBelow) = PrefixRange.Covering(phoneEnd);
        return db.FindWords.Where(w =>
            w.Kind != FindWordKind.ClientPhone && string.Compare(w.Word, from) >= 0 && string.Compare(w.Word, below) < 0
            || w.Kind == FindWordKind.ClientPhone && string.Compare(w.Word, phoneFrom) >= 0 && string.Compare(w.Word, phoneBelow) < 0
        );
    }
#pragma warning restore CA1309

    // A serial is its unit's, and leads to whose unit it is.
    private static IQueryable<Guid> Owners(ClinicDb db, IQueryable<FindWord> words) =>
        from word in words
        join unit in db.HairSystems on word.SubjectId equals unit.Id into units
        from unit in units.DefaultIfEmpty()
        let owner = word.Kind == FindWordKind.UnitSerial ? unit.ClientId : word.SubjectId
        where owner != null
        select owner!.Value;

    /// <param name="IsCut">There are more than are shown.</param>
    /// <param name="HasOtherSalons">There are salons whose clients one does not see, whoever is looked for.</param>
    /// <param name="Units">Units of that very serial.</param>
    public sealed record Screen(IReadOnlyList<Row> Rows, bool IsCut, bool HasOtherSalons, IReadOnlyList<FoundUnit> Units)
    {
        public static readonly Screen Nothing = new([], false, false, []);

        /// <summary>One finds the clients of one's own visits and nobody else, in one's own salon too.</summary>
        public bool OwnVisitsOnly { get; init; }

        /// <summary>The one unit whose serial was typed or scanned.</summary>
        public FoundUnit? StraightUnit => Units is [var only] ? only : null;

        /// <summary>The one client a code leads to.</summary>
        public Row? Straight => Rows.Where(r => r.IsExact).Take(2).ToArray() is [var only] ? only : null;
    }

    /// <param name="Today">The day it is in the client's home salon.</param>
    /// <param name="IsExact">The code, or a unit's serial, is just what was typed.</param>
    public sealed record Row(
        Guid ClientId,
        string Code,
        string Name,
        string? CalledAs,
        LocalDate? LeftOn,
        string Salon,
        LocalDate Today,
        LocalDate? DueOn,
        LocalDate? ClosesOn,
        bool Lifted,
        bool IsExact
    );

    /// <param name="IsNobodys">Of the stock.</param>
    public sealed record FoundUnit(Guid Id, string Serial, string Kind, bool IsNobodys);
}

/// <summary>All words that begin with a prefix, as plain bounds: row security lets an index serve these, and not a pattern.</summary>
/// <param name="From">The prefix itself, the least of them.</param>
/// <param name="Below">The least word, by code point, that is greater than all of them.</param>
public readonly record struct PrefixRange(string From, string Below)
{
    /// <param name="prefix">At least one letter or digit, normalised.</param>
    public static PrefixRange Covering(string prefix)
    {
        var runes = prefix.EnumerateRunes().ToArray();
        var last = runes[^1].Value + 1;
        // Surrogates are no characters of their own.
        runes[^1] = new Rune(last == 0xD800 ? 0xE000 : last);
        return new(prefix, string.Concat(runes.Select(rune => rune.ToString())));
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"[{From}, {Below})");
}
