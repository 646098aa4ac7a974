using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Clients;

/// <summary>Everything about a client that the desk keeps. Of two people editing at once the second is shown what the first saved.</summary>
public sealed class EditClient(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db.Clients.AsNoTracking().UnmergedById(clientId).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var atHome = StaffPermissions.MayManageClient(current.Person, client.HomeSalonId);
        var own = atHome ? current.Person.Salons : [];
        // To a salon of others a client is transferred: whoever sends them away decides for how long they still see them.
        var salons = await db
            .Salons.Where(s => !s.Retired && own.Contains(s.Id) || s.Id == client.HomeSalonId)
            .OrderBy(s => s.Name)
            .Select(s => new SalonChoice(s.Id, s.Name))
            .ToListAsync(cancellation);
        return new Screen(salons, Input.From(client), atHome, ClientCodes.ProposeCode());
    }

    /// <exception cref="Refusal">A code of one's own is taken, the phone cannot be read, or the client is gone.</exception>
    /// <exception cref="OvertakenException">Someone else saved this client since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await ClientCodes.SaveWithCodeAsync(
                input.Code,
                input.Proposed,
                nameof(Input.Code),
                code => writes.RunAsync(key, nameof(EditClient), input, db => WriteAsync(db, input, code, cancellation), cancellation)
            );
        }
        catch (SamePhoneNumberException e)
        {
            return new Outcome(input.ClientId) { SamePhoneNumber = e.Others };
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, string code, CancellationToken cancellation)
    {
        var client =
            await db.Clients.UnmergedById(input.ClientId).SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");
        WriteOnce.ExpectVersion(db, client, input.Version);
        RefuseToOthers(client, input);
        var wordsBefore = FindWordIndexer.For(client).ToList();
        var (salonBefore, daysBefore) = (client.HomeSalonId, client.PreferredDays);

        var phone =
            input.Phone == client.Phone
                ? client.Phone
                : await PhoneParser.ParseAsync(db, input.Phone, input.HomeSalonId, nameof(Input.Phone), cancellation);
        if (phone != client.Phone)
            await SharedPhoneCheck.ThrowIfSharedAsync(db, phone, butNot: client.Id, input.SharedPhone == input.Phone, cancellation);
        client.Recode(code);
        client.Rename(input.Name, input.CalledAs);
        client.SetContact(phone, input.Email);
        client.MoveTo(input.HomeSalonId);
        client.SetPreferences(input.PreferredDays, input.WashEveryDays);
        client.SetBirthDateAndNote(input.BirthDate, input.Note);

        await KeepInStepAsync(db, client, wordsBefore, cancellation);
        if (client.HomeSalonId != salonBefore || client.PreferredDays != daysBefore)
            db.WorkItems.Add(WorkItemFactory.RefreshDueDates(client.Id, clock.GetCurrentInstant()));
        return new Outcome(client.Id);
    }

    // The form offers neither; the database holds both.
    private void RefuseToOthers(Client client, Input input)
    {
        var atHome = StaffPermissions.MayManageClient(current.Person, client.HomeSalonId);
        var moves = input.HomeSalonId != client.HomeSalonId;
        if (moves && !(atHome && StaffPermissions.MayManageClient(current.Person, input.HomeSalonId)))
            throw new Refusal(EditClientRules.OwnSalons);
        if (!atHome && Input.From(client).Email != input.Email)
            throw new Refusal(EditClientRules.HomeAddress) { Field = nameof(Input.Email) };
    }

    // Only what changed: a client may also be found by the words of a record that was merged into theirs.
    private static async Task KeepInStepAsync(ClinicDb db, Client client, List<FindWord> before, CancellationToken cancellation)
    {
        var after = FindWordIndexer.For(client).ToList();
        var gone = before.Where(b => after.All(a => !Same(a, b))).ToList();
        db.FindWords.AddRange(after.Where(a => before.All(b => !Same(a, b))));
        if (gone.Count == 0)
            return;
        var kept = await db.FindWords.Where(w => w.SubjectId == client.Id).ToListAsync(cancellation);
        db.FindWords.RemoveRange(kept.Where(k => gone.Any(g => Same(g, k))));
    }

    private static bool Same(FindWord one, FindWord other) => one.Kind == other.Kind && one.Word == other.Word;

    /// <param name="Salons">Those the client may be moved to, and their own.</param>
    /// <param name="AtHome">Theirs to move.</param>
    /// <param name="Proposed">A code nobody can guess, for whoever wants another than they have.</param>
    public sealed record Screen(IReadOnlyList<SalonChoice> Salons, Input Saved, bool AtHome, string Proposed);

    public sealed record SalonChoice(Guid Id, string Name);

    public sealed record Input
    {
        [FromDatabase]
        public Guid ClientId { get; set; }

        /// <summary>The row's when the form opened.</summary>
        [FromDatabase]
        public uint Version { get; set; }

        [Field("Code")]
        public string Code { get; set; } = "";

        /// <summary>What the form proposed: where it is taken, another is drawn.</summary>
        [FormOnly]
        public string? Proposed { get; set; }

        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Called")]
        public string? CalledAs { get; set; }

        [Field("Home salon")]
        public Guid HomeSalonId { get; set; }

        [Field("Phone")]
        public string? Phone { get; set; }

        /// <summary>The number, as typed, that is another client's too and was agreed to.</summary>
        [FormOnly]
        public string? SharedPhone { get; set; }

        [Field("E-mail")]
        public string? Email { get; set; }

        [Field("Birth date")]
        public LocalDate? BirthDate { get; set; }

        [Field("Likes to come")]
        public WeekdaySet PreferredDays { get; set; }

        [Field("Wash and style", Format = "every {0} days", Nothing = "at home")]
        public int? WashEveryDays { get; set; }

        [Field("Note")]
        public string? Note { get; set; }

        public static Input From(Client client) =>
            new()
            {
                ClientId = client.Id,
                Version = client.Version,
                Code = client.Code,
                Name = client.Name,
                CalledAs = client.CalledAs,
                HomeSalonId = client.HomeSalonId,
                Phone = client.Phone,
                Email = client.Email,
                BirthDate = client.BirthDate,
                PreferredDays = client.PreferredDays,
                WashEveryDays = client.WashEveryDays,
                Note = client.Note,
            };
    }

    public sealed record Outcome(Guid ClientId)
    {
        /// <summary>Where there are some nothing was saved: they have the same number.</summary>
        public IReadOnlyList<SharedPhoneCheck.Other> SamePhoneNumber { get; init; } = [];
    }
}
