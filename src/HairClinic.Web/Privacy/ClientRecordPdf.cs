using System.Text.Json.Nodes;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Language;
using HairClinic.Web.Privacy.Paper;
using NodaTime.Text;

namespace HairClinic.Web.Privacy;

/// <summary>A client's own record as a paper one can read: who, contact, dates, units, bonds with products and lots, visits, consents.</summary>
public static class ClientRecordPdf
{
    public static async Task<byte[]> RenderAsync(
        ClinicDb db,
        Guid[] ids,
        IReadOnlyList<ClientTakeOut.Health> health,
        Instant now,
        CancellationToken cancellation
    )
    {
        var clients = await db
            .Clients.AsNoTracking()
            .Include(c => c.Events)
            .Include(c => c.CareFacts)
            .AsSplitQuery()
            .Where(c => ids.Contains(c.Id))
            .OrderBy(c => c.MergedIntoId != null)
            .ToListAsync(cancellation);
        using var paper = new PdfDocumentWriter("Your record");
        paper.Text($"Taken out on {Day(now.InUtc().Date)} (UTC). Dates are year-month-day.");
        foreach (var client in clients)
            Person(paper, client);
        await UnitsAsync(db, paper, ids, cancellation);
        await BondsAsync(db, paper, ids, cancellation);
        await VisitsAsync(db, paper, ids, cancellation);
        await ConsentsAsync(db, paper, ids, cancellation);
        foreach (var told in health)
            Health(paper, told);
        return paper.Finish();
    }

    private static void Person(PdfDocumentWriter paper, Client client)
    {
        paper.Heading(client.MergedIntoId is null ? "You" : "An earlier record of you");
        paper.Fact("Name", client.Name);
        paper.Fact("Called", client.CalledAs);
        paper.Fact("Code", client.Code);
        paper.Fact("Phone", client.Phone);
        paper.Fact("E-mail", client.Email);
        paper.Fact("Born", Day(client.BirthDate));
        paper.Fact("Left", Day(client.LeftOn));
        paper.Fact("Left because", client.NeedEndedBecause is { } because ? EnumWords.InEnglish(because) : null);
        paper.Fact("Note", client.Note);
        if (client.Events.Count > 0)
            paper.Heading("Dates you told us");
        foreach (var planned in client.Events.OrderBy(e => e.From))
            paper.Fact($"{Day(planned.From)} to {Day(planned.To)}", $"{planned.Kind}{(planned.Away ? ", away" : "")}");
        if (client.CareFacts.Count > 0)
            paper.Heading("Skin and habits");
        foreach (var fact in client.CareFacts.OrderBy(f => f.AsOf))
            paper.Fact(Day(fact.AsOf)!, Habits(fact));
    }

    private static async Task UnitsAsync(ClinicDb db, PdfDocumentWriter paper, Guid[] ids, CancellationToken cancellation)
    {
        paper.Heading("Units");
        var units = await db
            .HairSystems.AsNoTracking()
            .Where(u => u.ClientId != null && ids.Contains(u.ClientId.Value))
            .Join(db.UnitKinds, u => u.UnitKindId, k => k.Id, (u, k) => new { Unit = u, Kind = k.Name })
            .ToListAsync(cancellation);
        foreach (var unit in units.OrderBy(u => u.Unit.Dates.OrderedOn))
            paper.Fact(
                unit.Unit.Serial,
                Listed(
                    unit.Kind,
                    OnDay("ordered", unit.Unit.Dates.OrderedOn),
                    OnDay("arrived", unit.Unit.Dates.ArrivedOn),
                    OnDay("gone", unit.Unit.Dates.RetiredOn)
                )
            );
    }

    private static async Task BondsAsync(ClinicDb db, PdfDocumentWriter paper, Guid[] ids, CancellationToken cancellation)
    {
        paper.Heading("Bonds, with products and lots");
        var products = await db.Products.AsNoTracking().Include(p => p.Lots).ToDictionaryAsync(p => p.Id, cancellation);
        var serials = await db
            .HairSystems.AsNoTracking()
            .Where(u => db.Bonds.Any(b => b.HairSystemId == u.Id && ids.Contains(b.ClientId)))
            .ToDictionaryAsync(u => u.Id, u => u.Serial, cancellation);
        var bonds = await db.Bonds.AsNoTracking().Include(b => b.Products).Where(b => ids.Contains(b.ClientId)).ToListAsync(cancellation);
        foreach (var bond in bonds.OrderBy(b => b.AppliedOn))
        {
            var used = bond.Products.Select(u =>
                products[u.ProductId].Name
                + (products[u.ProductId].Lots.FirstOrDefault(l => l.Id == u.LotId) is { } lot ? $" (lot {lot.Code})" : "")
            );
            paper.Fact(
                Day(bond.AppliedOn)!,
                Listed([
                    $"unit {serials.GetValueOrDefault(bond.HairSystemId, "–")}",
                    .. used,
                    OnDay("due", bond.DueOn),
                    OnDay("off", bond.RemovedOn),
                ])
            );
        }
    }

    private static async Task VisitsAsync(ClinicDb db, PdfDocumentWriter paper, Guid[] ids, CancellationToken cancellation)
    {
        paper.Heading("Visits");
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var services = await db.ServiceKinds.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, cancellation);
        var visits = await db.Visits.AsNoTracking().Include(v => v.Record).Where(v => ids.Contains(v.ClientId)).ToListAsync(cancellation);
        foreach (var visit in visits.OrderBy(v => v.StartsAt))
        {
            var salon = salons[visit.SalonId];
            var start = LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(visit.StartsAt.InZone(salon.TimeZone).TimeOfDay);
            paper.Fact(
                $"{Day(visit.Day)} {start}",
                Listed(
                    services.GetValueOrDefault(visit.ServiceKindId, "–"),
                    salon.Name,
                    visit.State.ToString(),
                    visit.Note,
                    visit.Record?.Note
                )
            );
        }
    }

    private static async Task ConsentsAsync(ClinicDb db, PdfDocumentWriter paper, Guid[] ids, CancellationToken cancellation)
    {
        paper.Heading("What you agreed to");
        var ledger = await db
            .Consents.AsNoTracking()
            .Where(c => ids.Contains(c.ClientId))
            .Join(db.ConsentTexts, c => c.TextId, t => t.Id, (c, t) => new { Consent = c, Text = t })
            .ToListAsync(cancellation);
        foreach (var line in ledger.OrderBy(l => l.Consent.At))
            paper.Fact(
                Day(line.Consent.At.InUtc().Date)!,
                $"{EnumWords.InEnglish(line.Consent.Subject)}: {(line.Consent.Given ? "agreed" : "taken back")}. Words {line.Text.Number} ({line.Text.Language}): {line.Text.Words}"
            );
    }

    // Every answer there is, by its name, so that a new question is never left off the paper.
    private static void Health(PdfDocumentWriter paper, ClientTakeOut.Health told)
    {
        paper.Heading($"What you told of your health on {Day(told.On)}");
        foreach (var answer in JsonSerializer.SerializeToNode(told.Answers, JsonColumns.Options)!.AsObject())
        {
            var said = answer.Value is JsonArray { Count: 0 } ? null : answer.Value?.ToString();
            paper.Fact(
                PlainName(answer.Key),
                said is "false" ? "no"
                    : said is "true" ? "yes"
                    : said
            );
        }
    }

    private static string PlainName(string pascal) => JsonNamingPolicy.SnakeCaseLower.ConvertName(pascal).Replace('_', ' ');

    private static string Habits(CareFact fact) =>
        Listed(
            fact.Habits.KnownAnswers()
                .Select(known =>
                    known.Answer is decimal times
                        ? FormattableString.Invariant($"{known.Question.Name} {times:0.#} a week")
                        : $"{known.Question.Name} {known.Answer}"
                )
        );

    private static string? OnDay(string what, LocalDate? day) => day is null ? null : $"{what} {Day(day)}";

    private static string Listed(params IEnumerable<string?> parts) => string.Join(", ", parts.Where(p => !string.IsNullOrWhiteSpace(p)));

    private static string? Day(LocalDate? day) => day is { } date ? LocalDatePattern.Iso.Format(date) : null;
}
