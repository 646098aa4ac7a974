using System.Net;
using HairClinic.Domain.Clients;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Clients.Photos;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MyPhotos;

namespace HairClinic.Web.Tests.Features.MyHair.MyPhotos;

public sealed class MyPhotosTests(PgServer server)
{
    private readonly OwnScene _own = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_client_sees_the_photos_shared_with_them_and_no_others()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var shared = await KeepAsync(clinic, _own.Client, shared: true);
        var kept = await KeepAsync(clinic, _own.Client, shared: false);
        var others = await KeepAsync(clinic, _own.Other, shared: true);

        Assert.Equal(shared.Id, Assert.Single((await OpenAsync(clinic))!.Rows).Id);

        Assert.Equal("WEBP"u8.ToArray(), (await ReadAsync(clinic, shared.Id, null))![8..12]);
        Assert.NotNull(await ReadAsync(clinic, shared.Id, PhotoStore.Small));
        Assert.Null(await ReadAsync(clinic, kept.Id, null));
        Assert.Null(await ReadAsync(clinic, others.Id, null));
        Assert.Null(await ReadAsync(clinic, Guid.NewGuid(), null));
    }

    [Fact]
    public async Task A_photo_that_is_no_longer_shared_is_gone_from_their_page()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var photo = await KeepAsync(clinic, _own.Client, shared: true);
        await clinic.ReadAsync(async db =>
        {
            (await db.Photos.SingleAsync(p => p.Id == photo.Id, Cancel)).SetShared(false);
            return await db.SaveChangesAsync(Cancel);
        });

        Assert.Empty((await OpenAsync(clinic))!.Rows);
        Assert.Null(await ReadAsync(clinic, photo.Id, PhotoStore.Small));
    }

    [Fact]
    public async Task That_they_looked_is_noted_once_for_the_list_and_once_for_a_whole_picture()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        await OpenAsync(clinic);
        Assert.Empty(await NotesAsync(clinic));
        var photo = await KeepAsync(clinic, _own.Client, shared: true);

        await OpenAsync(clinic);
        await ReadAsync(clinic, photo.Id, PhotoStore.Small);
        await ReadAsync(clinic, photo.Id, null);

        Assert.Equal(
            [(AccessAction.OpenedPhotos, AccessActorKind.Client, null), (AccessAction.OpenedPhotos, AccessActorKind.Client, photo.Id)],
            await NotesAsync(clinic)
        );
    }

    [Fact]
    public async Task Many_photos_come_page_by_page_each_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        await clinic.ReadAsync(db =>
        {
            for (var i = 0; i < Slice.Page + 3; i++)
            {
                // Three a day, so that a page ends within a day.
                var day = new LocalDate(2027, 1, 1).PlusDays(i / 3);
                var photo = new Photo(
                    Guid.CreateVersion7(),
                    _own.Client.Id,
                    PhotoKind.After,
                    day,
                    day,
                    new(Guid.NewGuid(), 1, 1, 1),
                    null,
                    TestClinic.UsualNow
                );
                photo.SetShared(true);
                db.Photos.Add(photo);
            }
            return db.SaveChangesAsync(Cancel);
        });

        var first = await OpenAsync(clinic);
        var second = await OpenAsync(clinic, first!.NextBefore);

        Assert.Equal((Slice.Page, 3), (first.Rows.Count, second!.Rows.Count));
        Assert.Null(second.NextBefore);
        var all = first.Rows.Concat(second.Rows).ToList();
        Assert.Equal(all.Count, all.DistinctBy(r => r.Id).Count());
        Assert.Equal(all.Select(r => r.TakenOn).OrderDescending(), all.Select(r => r.TakenOn));
    }

    [Fact]
    public async Task Over_the_wire_a_picture_opens_for_its_own_client_alone_and_no_browser_keeps_it()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var photo = await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(site.PracticeId, "test", services => KeepAsync(services, site.Here.Own.Client, shared: true));
        var address = $"/my-hair/my-photos/{photo.Id}";

        using var mine = await (await site.OpenLinkAsync(site.Here.Own.Client)).GetAsync(address, Cancel);

        Assert.Equal(HttpStatusCode.OK, mine.StatusCode);
        Assert.Equal("image/webp", mine.Content.Headers.ContentType!.ToString());
        Assert.True(mine.Headers.CacheControl!.NoStore);
        Assert.Equal("nosniff", Assert.Single(mine.Headers.GetValues("X-Content-Type-Options")));
        foreach (var other in new[] { site.Here.Mate, site.Elsewhere.Own, site.Foreign.Own })
        {
            var browser = await site.OpenLinkAsync(other.Client);
            Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync(address, Cancel)).StatusCode);
            Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync(address + "/small", Cancel)).StatusCode);
        }
        Assert.Equal(HttpStatusCode.Redirect, (await site.Browser().GetAsync(address, Cancel)).StatusCode);
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Guid? before = null) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), s => s.OpenAsync(before, Cancel));

    private Task<byte[]?> ReadAsync(TestClinic clinic, Guid photo, string? part) =>
        clinic.UseAsync<Slice, byte[]?>(_own.Acting(clinic), s => s.ReadPictureAsync(photo, part, Cancel));

    private static Task<List<(AccessAction, AccessActorKind, Guid?)>> NotesAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (await db.AccessNotes.OrderBy(n => n.Number).ToListAsync(Cancel)).ConvertAll(n => (n.Action, n.ActorKind, n.SubjectId))
        );

    private static Task<Photo> KeepAsync(TestClinic clinic, Client client, bool shared) =>
        clinic.AsAsync(clinic.Job, services => KeepAsync(services, client, shared));

    private static async Task<Photo> KeepAsync(IServiceProvider services, Client client, bool shared)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        var pressed = await PhotoCompressor.CompressAsync(DrawnPhoto.Jpeg(), Cancel);
        var file = await services.GetRequiredService<PhotoStore>().StoreFilesAsync(db, client.Id, pressed, Cancel);
        var day = new LocalDate(2027, 2, 1);
        var photo = new Photo(Guid.CreateVersion7(), client.Id, PhotoKind.After, day, day, file, null, TestClinic.UsualNow);
        photo.SetShared(shared);
        db.Photos.Add(photo);
        await db.SaveChangesAsync(Cancel);
        return photo;
    }
}
