using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Settings;

/// <summary>A product and its lots. What its label asks for moves due dates, so they are worked out anew.</summary>
public sealed class EditProduct(ClinicDbFactory databases, WriteOnce writes, IClock clock)
    : RowEditor<Product, EditProduct.Input>(databases, writes)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = Databases.Open();
        return await ReadAsync(db, id.Value, cancellation);
    }

    protected override IQueryable<Product> Rows(ClinicDb db) => db.Products.Include(p => p.Lots);

    protected override Input Read(Product row) => Input.From(row);

    protected override Product Make(Input input) => new(Guid.CreateVersion7(), input.Name, input.Kind);

    protected override void Write(ClinicDb db, Product row, Input input, bool isNew)
    {
        if (row.LabelCureHours != input.LabelCureHours)
            db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        row.Edit(input.Name, input.Kind, input.Chemistry, input.LabelCureHours);
        foreach (var line in input.Lots)
            Keep(row, line);
        if (input.Retire)
            row.Retire();
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "products") ? new Refusal("There is a product called {0} already.", input.Name)
        : ConcurrentEdits.IsUniqueViolation(e, "product_lots") ? new Refusal("Two lots of a product cannot share a code.")
        : null;

    private static void Keep(Product product, LotLine line)
    {
        var lot = product.Lots.FirstOrDefault(l => l.Id == line.Id) ?? product.ReceiveLot(Guid.CreateVersion7(), line.Code, line.ExpiresOn);
        lot.Edit(line.Code, line.ExpiresOn);
        if (line.Finished)
            lot.Finish();
    }

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Kind")]
        public ProductKind Kind { get; set; }

        [Field("Chemistry")]
        public string? Chemistry { get; set; }

        [Field("Hours of cure on the label")]
        public int? LabelCureHours { get; set; }

        /// <summary>All lots; finished ones stay, because bonds name them.</summary>
        [Field("Lots")]
        public List<LotLine> Lots { get; set; } = [];

        public static Input From(Product product) =>
            new()
            {
                Name = product.Name,
                Kind = product.Kind,
                Chemistry = product.Chemistry,
                LabelCureHours = product.LabelCureHours,
                Lots =
                [
                    .. product
                        .Lots.OrderBy(l => l.Finished)
                        .ThenBy(l => l.Code, StringComparer.Ordinal)
                        .Select(l => new LotLine
                        {
                            Id = l.Id,
                            Code = l.Code,
                            ExpiresOn = l.ExpiresOn,
                            Finished = l.Finished,
                            WasFinished = l.Finished,
                        }),
                ],
            };
    }

    public sealed record LotLine : IFormRow
    {
        /// <summary>Empty for a new one.</summary>
        public Guid Id { get; set; }

        public string Code { get; set; } = "";
        public LocalDate? ExpiresOn { get; set; }
        public bool Finished { get; set; }

        /// <summary>Finished when the form opened; that is never undone.</summary>
        [FromDatabase]
        public bool WasFinished { get; set; }

        object? IFormRow.Key => Id == Guid.Empty ? null : Id;

        string IFormRow.Describe(FieldFormatter words) =>
            string.Join(
                ", ",
                [
                    Code,
                    .. ExpiresOn is { } day ? [words.Words["use by {0}", Dates.Day(day)].Value] : Array.Empty<string>(),
                    .. Finished ? [words.Words["finished"].Value] : Array.Empty<string>(),
                ]
            );
    }
}
