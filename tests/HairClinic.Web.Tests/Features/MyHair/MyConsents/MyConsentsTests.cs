using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Language;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MyConsents;

namespace HairClinic.Web.Tests.Features.MyHair.MyConsents;

public sealed class MyConsentsTests(PgServer server)
{
    private readonly OwnScene _own = new();
    private Person _stylist = null!;
    private ConsentText _photos = null!;
    private ConsentText _messages = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_client_reads_what_they_agreed_to_in_the_words_they_had_before_them()
    {
        await using var clinic = await OpenClinicAsync();
        await clinic.LayAsync(scene =>
            scene.Db.ConsentTexts.Add(
                new ConsentText(Guid.CreateVersion7(), ConsentSubject.Photos, "en-GB", 2, "Newer words.", scene.Now, null)
            )
        );

        var screen = (await OpenAsync(clinic))!;

        var line = screen.Standing.Single(l => l.Consent.Subject == ConsentSubject.Photos);
        Assert.Equal(("Photos may be kept.", "Tam Rowe"), (line.Words, line.By));
        Assert.Equal(2, screen.Standing.Count);
    }

    [Fact]
    public async Task Taking_back_adds_a_line_under_the_same_words_and_changes_none()
    {
        await using var clinic = await OpenClinicAsync();
        clinic.Clock.Advance(Duration.FromHours(1));

        await TakeBackAsync(clinic, ConsentSubject.Photos);

        var screen = (await OpenAsync(clinic))!;
        Assert.Equal([ConsentSubject.Messages], screen.Standing.Select(l => l.Consent.Subject));
        Assert.Equal(3, screen.History.Count);
        var line = screen.History[0];
        Assert.Equal((false, _photos.Id, ConsentWay.OnOwnPage, null), (line.Consent.Given, line.Consent.TextId, line.Consent.Way, line.By));
        Assert.True(await LettersAsync(clinic));
    }

    [Fact]
    public async Task Taking_messages_back_stops_the_letters()
    {
        await using var clinic = await OpenClinicAsync();

        await TakeBackAsync(clinic, ConsentSubject.Messages);

        Assert.False(await LettersAsync(clinic));
    }

    [Fact]
    public async Task A_second_tap_is_one_line_and_what_does_not_stand_cannot_be_taken_back()
    {
        await using var clinic = await OpenClinicAsync();
        var key = Guid.CreateVersion7();

        await TakeBackAsync(clinic, ConsentSubject.Photos, key);
        await TakeBackAsync(clinic, ConsentSubject.Photos, key);

        Assert.Equal(3, (await OpenAsync(clinic))!.History.Count);
        await Refused.SayingAsync(
            "This was taken back already, or was never agreed to.",
            () => TakeBackAsync(clinic, ConsentSubject.Photos)
        );
        await Refused.SayingAsync(
            "This was taken back already, or was never agreed to.",
            () => TakeBackAsync(clinic, ConsentSubject.Treatment)
        );
    }

    [Fact]
    public async Task What_stands_on_a_record_folded_into_theirs_is_shown_and_can_be_taken_back()
    {
        Client folded = null!;
        await using var clinic = await OpenClinicAsync(scene =>
        {
            folded = scene.AddClient("C-9", "Ada Fenwick", _own.Salon);
            var text = new ConsentText(
                Guid.CreateVersion7(),
                ConsentSubject.PatchTest,
                "en-GB",
                1,
                "A patch test is fine.",
                scene.Now,
                null
            );
            scene.Db.AddRange(text, Said(folded, text, scene));
        });
        await clinic.LayAsync(scene => scene.Db.Clients.Single(c => c.Id == folded.Id).MergeInto(_own.Client));
        Assert.Equal(3, (await OpenAsync(clinic))!.Standing.Count);

        await TakeBackAsync(clinic, ConsentSubject.PatchTest);

        Assert.Equal(2, (await OpenAsync(clinic))!.Standing.Count);
    }

    [Fact]
    public async Task Nobody_elses_consents_are_there()
    {
        await using var clinic = await OpenClinicAsync(scene => scene.Db.Add(Said(_own.Other, _photos, scene)));

        Assert.Equal(2, (await OpenAsync(clinic))!.History.Count);
    }

    private Task<TestClinic> OpenClinicAsync(Action<Scene>? more = null) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                _stylist = scene.Hire("Tam Rowe", StaffRole.Stylist, _own.Salon);
                _photos = new(Guid.CreateVersion7(), ConsentSubject.Photos, "en-GB", 1, "Photos may be kept.", scene.Now, null);
                _messages = new(Guid.CreateVersion7(), ConsentSubject.Messages, "en-GB", 1, "I may be written to.", scene.Now, null);
                scene.Db.AddRange(_photos, _messages, Said(_own.Client, _photos, scene), Said(_own.Client, _messages, scene));
                more?.Invoke(scene);
            }
        );

    private Consent Said(Client client, ConsentText text, Scene scene) =>
        new(Guid.CreateVersion7(), client.Id, text.Subject, given: true, text.Id, scene.Now, _stylist.Id, ConsentWay.OnTablet);

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), s => s.OpenAsync(Cancel));

    private Task<Slice.Outcome> TakeBackAsync(TestClinic clinic, ConsentSubject subject, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(_own.Acting(clinic), s => s.SaveAsync(key ?? Guid.CreateVersion7(), new(subject), Cancel));

    private Task<bool> LettersAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (await db.ClientPreferences.SingleOrDefaultAsync(p => p.ClientId == _own.Client.Id, Cancel))?.Letters ?? true
        );
}
