using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using HairClinic.Web.Keys;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Clients.Photos;

namespace HairClinic.Web.Tests.Features.Clients.Photos;

public sealed class PhotosTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _ada = null!;
    private Client _bea = null!;
    private UnitKind _kind = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_photo_lies_sealed_outside_the_book_and_opens_for_its_own_client_only()
    {
        await using var clinic = await OpenClinicAsync();
        var added = await AddAsync(clinic);

        var files = Directory.GetFiles(FolderOf(clinic)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal([added.FileId.ToString("N"), added.FileId.ToString("N") + ".small"], files.Select(Path.GetFileName));
        foreach (var file in files)
        {
            Assert.Equal(AesGcmCipher.Format, (await File.ReadAllBytesAsync(file, Cancel))[0]);
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }
        Assert.Equal("WEBP"u8.ToArray(), (await ReadAsync(clinic, _ada.Id, added.PhotoId, null))![8..12]);
        Assert.NotNull(await ReadAsync(clinic, _ada.Id, added.PhotoId, PhotoStore.Small));
        Assert.Null(await ReadAsync(clinic, _bea.Id, added.PhotoId, null));
        Assert.Null(await ReadAsync(clinic, _ada.Id, added.PhotoId, null, clinic.Acting(_given.StylistThere, _given.There)));
    }

    [Fact]
    public async Task Adding_opening_sharing_and_removing_are_noted_and_a_removed_picture_is_gone()
    {
        await using var clinic = await OpenClinicAsync();
        var added = await AddAsync(clinic);
        await OpenAsync(clinic, clinic.Acting(_given.Stylist, _given.Here));
        await DoAsync(clinic, s => s.SetSharedAsync(_ada.Id, added.PhotoId, shared: true, Cancel));
        Assert.Equal(1, await clinic.ReadAsync(db => PhotoStore.SharedWith(db, _ada.Id).CountAsync(Cancel)));

        await DoAsync(clinic, s => s.RemoveAsync(_ada.Id, added.PhotoId, Cancel));

        Assert.Empty(Directory.GetFiles(FolderOf(clinic)));
        Assert.Empty((await OpenAsync(clinic, clinic.Acting(_given.Stylist, _given.Here)))!.Rows);
        Assert.Equal(0, await clinic.ReadAsync(db => PhotoStore.SharedWith(db, _ada.Id).CountAsync(Cancel)));
        Assert.Equal(
            [
                AccessAction.AddedPhoto,
                AccessAction.OpenedPhotos,
                AccessAction.ChangedPhoto,
                AccessAction.RemovedPhoto,
                AccessAction.OpenedPhotos,
            ],
            await clinic.ReadAsync(db => db.AccessNotes.OrderBy(n => n.Number).Select(n => n.Action).ToListAsync(Cancel))
        );
    }

    [Fact]
    public async Task Without_the_clients_word_no_photo_is_kept()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync("Ask the client first, and say that they agreed.", () => AddAsync(clinic, new() { ClientId = _ada.Id }));

        Assert.False(new PhotosRules().Validate(new Slice.Input { ClientId = _ada.Id }).IsValid);
        Assert.Empty(Directory.Exists(FolderOf(clinic)) ? Directory.GetFiles(FolderOf(clinic)) : []);
        Assert.Equal(0, await clinic.ReadAsync(db => db.AccessNotes.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_second_tap_adds_it_once_and_leaves_no_file_behind()
    {
        await using var clinic = await OpenClinicAsync();
        var key = Guid.CreateVersion7();

        var first = await AddAsync(clinic, key: key);
        var second = await AddAsync(clinic, key: key);

        Assert.Equal(first, second);
        Assert.Equal(2, Directory.GetFiles(FolderOf(clinic)).Length);
        Assert.NotNull(await ReadAsync(clinic, _ada.Id, first.PhotoId, null));
    }

    [Theory]
    [InlineData(StaffRole.Owner, true, true)]
    [InlineData(StaffRole.Manager, true, true)]
    [InlineData(StaffRole.Stylist, true, true)]
    [InlineData(StaffRole.FrontDesk, false, false)]
    [InlineData(StaffRole.Trainee, false, false)]
    public async Task Who_sees_and_who_adds(StaffRole role, bool sees, bool adds)
    {
        await using var clinic = await OpenClinicAsync();
        var added = await AddAsync(clinic);
        var person = clinic.Acting(_given.Of(role), _given.Here);

        Assert.Equal(sees, await OpenAsync(clinic, person) is not null);
        Assert.Equal(sees, await ReadAsync(clinic, _ada.Id, added.PhotoId, null, person) is not null);
        if (!adds)
            await Refused.SayingAsync(
                "Photos are added and changed by the owner, managers and stylists.",
                () => AddAsync(clinic, by: person)
            );
    }

    [Fact]
    public async Task A_trainee_sees_those_of_the_clients_they_work_on_and_adds_none()
    {
        await using var clinic = await OpenClinicAsync();
        var added = await AddAsync(clinic);
        var trainee = clinic.Acting(_given.Of(StaffRole.Trainee), _given.Here);
        await clinic.LayAsync(scene => VisitOfAda(scene, _given.Of(StaffRole.Trainee)));

        var screen = await OpenAsync(clinic, trainee);

        Assert.False(screen!.MayAdd);
        Assert.Single(screen.Rows);
        Assert.NotNull(await ReadAsync(clinic, _ada.Id, added.PhotoId, PhotoStore.Small, trainee));
    }

    [Fact]
    public async Task Pages_hold_twenty_four_and_go_on_where_the_last_one_ended()
    {
        await using var clinic = await OpenClinicAsync();
        await clinic.ReadAsync(db =>
        {
            for (var i = 0; i < Slice.Page + 3; i++)
                db.Photos.Add(Row(i));
            return db.SaveChangesAsync(Cancel);
        });
        var person = clinic.Acting(_given.Stylist, _given.Here);

        var first = await OpenAsync(clinic, person);
        var second = await OpenAsync(clinic, person, first!.NextBefore);

        Assert.Equal((Slice.Page, 3), (first.Rows.Count, second!.Rows.Count));
        Assert.Null(second.NextBefore);
        Assert.Empty(first.Rows.Intersect(second.Rows));

        Photo Row(int i) =>
            new(
                Guid.CreateVersion7(),
                _ada.Id,
                PhotoKind.After,
                _given.Today,
                _given.Today,
                new(Guid.NewGuid(), 10, 10, 10),
                by: null,
                TestClinic.UsualNow + NodaTime.Duration.FromSeconds(i)
            );
    }

    [Fact]
    public async Task A_photo_names_a_unit_and_a_visit_of_the_client_and_no_others()
    {
        HairSystem own = null!,
            hers = null!;
        Visit visit = null!;
        await using var clinic = await OpenClinicAsync();
        await clinic.LayAsync(scene =>
        {
            own = scene.AddUnit(_ada, _kind, _given.Today.PlusDays(-9));
            hers = scene.AddUnit(_bea, _kind, _given.Today.PlusDays(-9));
            visit = VisitOfAda(scene, _given.Stylist);
        });
        var stylist = clinic.Acting(_given.Stylist, _given.Here);
        Slice.Input Of(Guid? unit, Guid? at) =>
            new()
            {
                ClientId = _ada.Id,
                Agreed = true,
                UnitId = unit,
                VisitId = at,
            };

        await Refused.SayingAsync("This unit is not the client’s, and was not lent to them.", () => AddAsync(clinic, Of(hers.Id, null)));
        await Refused.SayingAsync("This visit is not the client’s.", () => AddAsync(clinic, Of(own.Id, Guid.CreateVersion7())));
        await AddAsync(clinic, Of(own.Id, visit.Id));
        await AddAsync(clinic);

        var all = await OpenAsync(clinic, stylist);
        Assert.Equal((own.Serial, visit.Id), (Assert.Single(all!.Units).Serial, Assert.Single(all.Visits).Id));
        Assert.Equal(2, all.Rows.Count);
        var shown = Assert.Single((await OpenAsync(clinic, stylist, unit: own.Id))!.Rows);
        Assert.Equal((own.Serial, visit.Id, _given.Today), (shown.Of!.Serial, shown.At!.Id, shown.At.Day));
        Assert.Empty((await OpenAsync(clinic, stylist, unit: hers.Id))!.Rows);
    }

    [Fact]
    public async Task Once_the_clients_key_is_destroyed_no_picture_opens()
    {
        await using var clinic = await OpenClinicAsync();
        var added = await AddAsync(clinic);
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await services.GetRequiredService<Sealer>().DestroyKeyAsync(db, _ada.Id, Cancel);
            }
        );

        Assert.Null(await ReadAsync(clinic, _ada.Id, added.PhotoId, null));
    }

    private Visit VisitOfAda(Scene scene, Person person)
    {
        var visit = new Visit(Guid.CreateVersion7(), _ada.Id, _given.Here.Id, _given.Scene.ServiceWithPurpose(ServicePurpose.Rebond).Id);
        visit.PutAt([(Domain.Chairs.SegmentKind.HandsOn, 60)], scene.Now, _given.Chair.Id, person.Id, _given.Here, [Guid.CreateVersion7()]);
        scene.Db.Visits.Add(visit);
        return visit;
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _ada = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here);
                _kind = g.Scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _bea = g.Scene.AddClient("C-2", "Bea Quill", g.Here);
            })
        );

    private string FolderOf(TestClinic clinic) => Path.Combine(server.FilesFolder, clinic.PracticeId.ToString("N"));

    private Task<Slice.Outcome> AddAsync(TestClinic clinic, Slice.Input? input = null, PersonActor? by = null, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            by ?? clinic.Acting(_given.Stylist, _given.Here),
            s =>
                s.AddAsync(
                    key ?? Guid.CreateVersion7(),
                    input ?? new() { ClientId = _ada.Id, Agreed = true },
                    new MemoryStream(DrawnPhoto.Jpeg()),
                    Cancel
                )
        );

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, PersonActor person, Guid? before = null, Guid? unit = null) =>
        clinic.UseAsync<Slice, Slice.Screen?>(person, s => s.OpenAsync(_ada.Id, before, unit, Cancel));

    private Task<byte[]?> ReadAsync(TestClinic clinic, Guid client, Guid photo, string? part, PersonActor? by = null) =>
        clinic.UseAsync<Slice, byte[]?>(
            by ?? clinic.Acting(_given.Stylist, _given.Here),
            s => s.ReadPictureAsync(client, photo, part, Cancel)
        );

    private Task<bool> DoAsync(TestClinic clinic, Func<Slice, Task> action) =>
        clinic.UseAsync<Slice, bool>(
            clinic.Acting(_given.Stylist, _given.Here),
            async s =>
            {
                await action(s);
                return true;
            }
        );
}
