using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>A service: what it is for, how long it takes, what it costs. Booked visits keep the length they were booked with.</summary>
public sealed class EditService(ClinicDbFactory databases, WriteOnce writes) : RowEditor<ServiceKind, EditService.Input>(databases, writes)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = Databases.Open();
        var currencies = await db
            .Salons.Where(s => !s.Retired)
            .Select(s => s.Currency)
            .Distinct()
            .OrderBy(c => c)
            .ToListAsync(cancellation);
        var input = id is null
            ? new Input { Currency = currencies.FirstOrDefault(), Steps = [new()] }
            : await ReadAsync(db, id.Value, cancellation);
        return input is null ? null : new Screen(input, currencies);
    }

    protected override IQueryable<ServiceKind> Rows(ClinicDb db) => db.ServiceKinds.Include(k => k.Steps);

    protected override Input Read(ServiceKind row) => Input.From(row);

    protected override ServiceKind Make(Input input) => new(Guid.CreateVersion7(), input.Name, input.Purpose);

    protected override void Write(ClinicDb db, ServiceKind row, Input input, bool isNew)
    {
        row.Edit(input.Name, input.Purpose, input.PriceMinor, input.PriceMinor is null ? null : input.Currency);
        row.SetOfferedToClients(input.OfferedToClients);
        if (!input.Steps.SequenceEqual(Input.StepsOf(row)))
            row.SetSteps(input.Steps.Select(s => (Guid.CreateVersion7(), s.Kind, s.Minutes ?? 0)));
        if (input.Retire)
            row.Retire();
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "service_kinds") ? new Refusal("There is a service called {0} already.", input.Name) : null;

    public sealed record Screen(Input Input, IReadOnlyList<string> Currencies);

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("What for")]
        public ServicePurpose Purpose { get; set; } = ServicePurpose.Rebond;

        [Field("Minutes, chair and hands", ByPlace = true)]
        public List<Step> Steps { get; set; } = [];

        [Field("Price", Currency = nameof(Currency))]
        public long? PriceMinor { get; set; }

        [Field("Currency")]
        public string? Currency { get; set; }

        [Field("Clients may book it on their own page")]
        public bool OfferedToClients { get; set; }

        public static Input From(ServiceKind kind) =>
            new()
            {
                Name = kind.Name,
                Purpose = kind.Purpose,
                Steps = [.. StepsOf(kind)],
                PriceMinor = kind.PriceMinor,
                Currency = kind.Currency,
                OfferedToClients = kind.OfferedToClients,
            };

        public static IEnumerable<Step> StepsOf(ServiceKind kind) =>
            kind.Steps.OrderBy(s => s.Position).Select(s => new Step { Kind = s.Kind, Minutes = s.Minutes });
    }

    /// <summary>One stretch of the service. The form makes one, hands on all the time; rows with more keep theirs.</summary>
    public sealed record Step : IFormRow
    {
        public SegmentKind Kind { get; set; } = SegmentKind.HandsOn;
        public int? Minutes { get; set; }

        // Known by its place.
        object? IFormRow.Key => null;

        string IFormRow.Describe(FieldFormatter words) => $"{words.Format(Kind)} {words.Format(Minutes)}";
    }
}
