using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Binder;

/// <summary>Clients, recognised by the practice's own code.</summary>
public sealed class ImportClients(ClinicDb db, ImportStep order, Instant now) : SheetImport(db, order, now)
{
    private readonly List<Client> _renamed = [];
    private Dictionary<Guid, Salon> _salons = [];
    private NameIndex<Salon> _salonNames = new([], s => s.Name);
    private Dictionary<string, Client> _clients = [];
    private bool _duesMove;

    protected override async Task LoadAsync(CancellationToken cancellation)
    {
        Cells.RegionAt = RegionAt;
        _salons = await Db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        _salonNames = new(_salons.Values, s => s.Name);
        _clients = await Db
            .Clients.Include(c => c.CareFacts)
            .AsSplitQuery()
            .ToDictionaryAsync(c => c.Code, StringComparer.Ordinal, cancellation);
    }

    protected override void ReadRow(SheetRow row)
    {
        if (Read(row, ClientRow.Table) is not { } read || !IsFirst(row, read.Code))
            return;
        if (_salonNames.Find(read.HomeSalon!) is not { } salon)
        {
            // A salon needs a time zone and hours, which no cell tells: it is opened by a person, not by a file.
            Expect(row, ClientColumns.HomeSalon, "a salon of this practice: {0}", Listed(_salonNames.Names));
            return;
        }
        read = read with { HomeSalon = salon.Name };
        if (
            !MayMove(row, _clients.GetValueOrDefault(read.Code), salon) || !MayReach(row, _clients.GetValueOrDefault(read.Code), read.Email)
        )
            return;
        if (_clients.TryGetValue(read.Code, out var client))
            Change(row, client, read, salon);
        else
            Add(row, read, salon);
    }

    // Nobody is taken from another salon by a file, nor sent to one: that is a transfer, by whoever is at home.
    private bool MayMove(SheetRow row, Client? client, Salon salon)
    {
        if (client?.HomeSalonId == salon.Id || Db.Actor is not PersonActor person)
            return true;
        if (client is not null && !StaffPermissions.MayManageClient(person, client.HomeSalonId))
            Expect(
                row,
                ClientColumns.HomeSalon,
                "their home salon as it is: {0}; only people there move this client",
                _salons[client.HomeSalonId].Name
            );
        else if (!StaffPermissions.MayManageClient(person, salon.Id))
            Expect(
                row,
                ClientColumns.HomeSalon,
                "a salon you work in: {0}; to another one a client is transferred",
                Listed(_salons.Values.Where(s => StaffPermissions.MayManageClient(person, s.Id)).Select(s => s.Name).Order())
            );
        else
            return true;
        return false;
    }

    // It opens their own pages.
    private bool MayReach(SheetRow row, Client? client, string? email)
    {
        if (
            client is null
            || email is null
            || string.Equals(email, client.Email, StringComparison.OrdinalIgnoreCase)
            || Db.Actor is not PersonActor person
            || StaffPermissions.MayManageClient(person, client.HomeSalonId)
        )
            return true;
        Expect(row, ClientColumns.Email, "their e-mail address as it is: only {0} changes it", _salons[client.HomeSalonId].Name);
        return false;
    }

    protected override async Task FinishAsync(CancellationToken cancellation)
    {
        if (_duesMove)
            Db.WorkItems.Add(new WorkItem(Guid.CreateVersion7(), WorkKind.RefreshDueDates, "{}", Now));
        if (_renamed.Count == 0)
            return;
        var ids = _renamed.ConvertAll(c => c.Id);
        Db.FindWords.RemoveRange(await Db.FindWords.Where(w => ids.Contains(w.SubjectId)).ToListAsync(cancellation));
        Db.FindWords.AddRange(_renamed.SelectMany(FindWordIndexer.For));
    }

    // Where the row's own salon is; nobody can say for a salon the book lacks, which is a problem of its own.
    private string? RegionAt(string salon) =>
        _salonNames.Find(salon) is { } known ? PhoneNumberParser.RegionForZone(known.Zone, Conventions.Region) : null;

    private void Add(SheetRow row, ClientRow read, Salon salon)
    {
        var client = new Client(Guid.CreateVersion7(), read.Code, read.Name!, salon.Id);
        Write(client, read, salon);
        if (read.Care.KnownAnswers().Any())
            Learn(client, read, salon);
        Db.Clients.Add(client);
        Db.FindWords.AddRange(FindWordIndexer.For(client));
        CountNew(row, client);
    }

    private void Change(SheetRow row, Client client, ClientRow read, Salon salon)
    {
        var book = ClientRow.FromClient(client, _salons[client.HomeSalonId].Name);
        var merged = read.MergeWithBook(book);
        var differs = !merged.Cells().SequenceEqual(book.Cells());
        if (differs)
        {
            Write(client, merged, salon);
            if (merged.Care != book.Care)
                Learn(client, merged, salon);
            _duesMove |= merged.Days != book.Days || merged.HomeSalon != book.HomeSalon;
            _renamed.Add(client);
        }
        CountExisting(row, client, differs);
    }

    private static void Write(Client client, ClientRow row, Salon salon)
    {
        client.Rename(row.Name!, row.Called);
        client.MoveTo(salon.Id);
        client.SetContact(row.Phone, row.Email);
        client.SetPreferences(row.Days, client.WashEveryDays);
        client.SetBirthDateAndNote(row.Born, row.Note);
    }

    private void Learn(Client client, ClientRow row, Salon salon) =>
        client.AddCareFact(new CareFact(Guid.CreateVersion7(), client.Id, salon.DayOf(Now), row.Care));
}
