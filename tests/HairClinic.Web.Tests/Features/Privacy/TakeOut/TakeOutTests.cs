using System.IO.Compression;
using System.Text.Json.Nodes;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using Slice = HairClinic.Web.Features.Privacy.TakeOut;

namespace HairClinic.Web.Tests.Features.Privacy.TakeOut;

public sealed class TakeOutTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    private static CancellationToken Cancel => PrivacyScene.Cancel;

    [Fact]
    public async Task The_rows_hold_everything_and_nobody_else()
    {
        await using var clinic = await _scene.OpenAsync(server);

        using var archive = new ZipArchive(await WriteAsync(clinic, _scene.AsOwner(clinic)));

        var json = await TextAsync(archive, "client.json");
        foreach (var told in PrivacyScene.Telling.Where(t => t != "quillfeather" && t != "Zozo-called"))
            Assert.Contains(told, json, StringComparison.Ordinal);
        Assert.DoesNotContain("Somebody Else", json, StringComparison.Ordinal);
        var root = JsonNode.Parse(json)!.AsObject();
        foreach (
            var table in new[]
            {
                "clients",
                "life_events",
                "care_facts",
                "contact_notes",
                "hair_systems",
                "bonds",
                "bond_products",
                "visits",
                "consents",
                "health",
                "seen",
            }
        )
            Assert.NotEmpty(root[table]!.AsArray());
        Assert.Contains("readable.pdf", await TextAsync(archive, "README.txt"), StringComparison.Ordinal);
    }

    // Read back by PdfPig, a reader that is none of ours.
    [Fact]
    public async Task The_paper_reads_back_with_accents_lots_and_page_numbers()
    {
        await using var clinic = await _scene.OpenAsync(server);

        using var archive = new ZipArchive(await WriteAsync(clinic, _scene.AsOwner(clinic)));

        using var paper = PdfDocument.Open(await BytesAsync(archive.GetEntry("readable.pdf")!));
        var text = string.Join("\n", paper.GetPages().Select(p => ContentOrderTextExtractor.GetText(p)));
        foreach (
            var told in new[]
            {
                "Zoë Quillfeather-Ångström",
                "lot A-101",
                "Adhesive A",
                "allergic to spider-plants",
                "Photos for the record",
                $"Page 1 of {paper.NumberOfPages}",
            }
        )
            Assert.Contains(told, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photos_are_in_it_opened()
    {
        await using var clinic = await _scene.OpenAsync(server);

        using var archive = new ZipArchive(await WriteAsync(clinic, _scene.AsOwner(clinic)));

        var photo = Assert.Single(archive.Entries, e => e.FullName.StartsWith("photos/", StringComparison.Ordinal));
        Assert.Equal([1, 2, 3], await BytesAsync(photo));
    }

    [Fact]
    public async Task That_it_was_taken_out_is_noted()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await WriteAsync(clinic, _scene.AsOwner(clinic));

        var note = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(n => n.Action == AccessAction.ExportedClient, Cancel));
        Assert.Equal((_scene.Client.Id, _scene.Owner.Id), (note.ClientId!.Value, note.ActorId!.Value));
    }

    [Fact]
    public async Task A_manager_of_another_salon_finds_nobody()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var manager = clinic.Acting(_scene.Given.Scene.People.Single(p => p.Name == "Manager there"), _scene.Given.There);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(manager, s => s.OpenAsync(_scene.Client.Id, Cancel)));
        Assert.False(await clinic.UseAsync<Slice, bool>(manager, s => s.WriteAsync(_scene.Client.Id, _ => Stream.Null, Cancel)));
    }

    private async Task<MemoryStream> WriteAsync(TestClinic clinic, PersonActor actor)
    {
        var file = new MemoryStream();
        Assert.True(await clinic.UseAsync<Slice, bool>(actor, s => s.WriteAsync(_scene.Client.Id, _ => file, Cancel)));
        file.Position = 0;
        return file;
    }

    private static async Task<string> TextAsync(ZipArchive archive, string name) =>
        System.Text.Encoding.UTF8.GetString(await BytesAsync(archive.GetEntry(name)!));

    private static async Task<byte[]> BytesAsync(ZipArchiveEntry entry)
    {
        await using var stream = await entry.OpenAsync(Cancel);
        using var all = new MemoryStream();
        await stream.CopyToAsync(all, Cancel);
        return all.ToArray();
    }
}
