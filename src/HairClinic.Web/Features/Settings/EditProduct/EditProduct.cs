using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Ui;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Settings;

/// <summary>A product and its lots. What its label asks for moves due dates, so they are worked out anew.</summary>
public sealed class EditProduct(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = databases.Open();
        var product = await db.Products.AsNoTracking().Include(p => p.Lots).SingleOrDefaultAsync(p => p.Id == id, cancellation);
        return product is null ? null : Input.Of(product);
    }

    /// <exception cref="Refusal">The name or a lot's code is taken.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditProduct), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "products"))
        {
            throw new Refusal("There is a product called {0} already.", input.Name);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "product_lots"))
        {
            throw new Refusal("Two lots of a product cannot share a code.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        Product product;
        if (input.Id is { } id)
        {
            product = await db.Products.Include(p => p.Lots).SingleAsync(p => p.Id == id, cancellation);
            Guarded.Hold(db, product, input.Version);
        }
        else
        {
            product = new Product(Guid.CreateVersion7(), input.Name, input.Kind);
            db.Products.Add(product);
        }
        if (product.LabelCureHours != input.LabelCureHours)
            db.WorkItems.Add(WorkItems.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        product.Edit(input.Name, input.Kind, input.Chemistry, input.LabelCureHours);
        foreach (var line in input.Lots)
            Keep(product, line);
        if (input.Retire)
            product.Retire();
        return new Outcome(product.Id);
    }

    private static void Keep(Product product, LotLine line)
    {
        var lot = product.Lots.FirstOrDefault(l => l.Id == line.Id) ?? product.Receive(Guid.CreateVersion7(), line.Code, line.ExpiresOn);
        lot.Edit(line.Code, line.ExpiresOn);
        if (line.Finished)
            lot.Finish();
    }

    public sealed record Input : IEditable
    {
        [FromBook]
        public Guid? Id { get; set; }

        [FromBook]
        public uint Version { get; set; }

        [OfTheForm]
        public bool Retire { get; set; }

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

        public static Input Of(Product product) =>
            new()
            {
                Id = product.Id,
                Version = product.Version,
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
        [FromBook]
        public bool WasFinished { get; set; }

        object? IFormRow.Key => Id == Guid.Empty ? null : Id;

        string IFormRow.Say(EditWords words) =>
            string.Join(
                ", ",
                [
                    Code,
                    .. ExpiresOn is { } day ? [words.Words["use by {0}", Dates.Day(day)].Value] : Array.Empty<string>(),
                    .. Finished ? [words.Words["finished"].Value] : Array.Empty<string>(),
                ]
            );
    }

    public sealed record Outcome(Guid ProductId);
}
