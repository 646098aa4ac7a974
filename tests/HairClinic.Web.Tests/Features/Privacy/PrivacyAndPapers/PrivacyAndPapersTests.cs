using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Language;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Slice = HairClinic.Web.Features.Privacy.PrivacyAndPapers;
using WordsSlice = HairClinic.Web.Features.Privacy.EditConsentWords;

namespace HairClinic.Web.Tests.Features.Privacy.PrivacyAndPapers;

public sealed class PrivacyAndPapersTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    private static CancellationToken Cancel => PrivacyScene.Cancel;

    [Fact]
    public async Task Taking_back_is_a_line_of_its_own_and_the_last_word_stands()
    {
        await using var clinic = await _scene.OpenAsync(server);
        clinic.Clock.AdvanceMinutes(1);

        await SaveAsync(clinic, ConsentSubject.Photos, given: false, number: 1);

        var screen = await OpenAsync(clinic);
        Assert.Equal([false, true], screen.History.Select(l => l.Consent.Given));
        Assert.False(screen.Standing.Single(s => s.Subject == ConsentSubject.Photos).Last!.Given);
        Assert.Null(screen.Standing.Single(s => s.Subject == ConsentSubject.TeachingPhotos).Last);
    }

    [Fact]
    public async Task A_consent_to_reminders_is_not_asked_and_one_that_stands_is_shown_to_be_taken_back()
    {
        await using var clinic = await _scene.OpenAsync(server);
        Assert.DoesNotContain((await OpenAsync(clinic)).Standing, s => s.Subject == ConsentSubject.Messages);
        await Refused.SayingAsync(
            "Nobody is sent reminders, so this is not asked.",
            () => SaveAsync(clinic, ConsentSubject.Messages, given: true, number: 1)
        );
        await clinic.ReadAsync(async db =>
        {
            var words = new ConsentText(
                Guid.CreateVersion7(),
                ConsentSubject.Messages,
                "en-GB",
                1,
                "I may be written to.",
                TestClinic.UsualNow,
                null
            );
            db.ConsentTexts.Add(words);
            var agreed = TestClinic.UsualNow - Duration.FromDays(9);
            db.Consents.Add(
                new Consent(
                    Guid.CreateVersion7(),
                    _scene.Client.Id,
                    ConsentSubject.Messages,
                    true,
                    words.Id,
                    agreed,
                    null,
                    ConsentWay.OnPaper
                )
            );
            return await db.SaveChangesAsync(Cancel);
        });

        var standing = (await OpenAsync(clinic)).Standing.Single(s => s.Subject == ConsentSubject.Messages);
        Assert.Equal((true, "I may be written to."), (standing.Last!.Given, standing.Words));

        await SaveAsync(clinic, ConsentSubject.Messages, given: false, number: 1);

        Assert.DoesNotContain((await OpenAsync(clinic)).Standing, s => s.Subject == ConsentSubject.Messages);
        Assert.Contains((await OpenAsync(clinic)).History, l => l.Consent.Subject == ConsentSubject.Messages);
        var offered = await clinic.UseAsync<WordsSlice, WordsSlice.Screen>(_scene.AsOwner(clinic), s => s.OpenAsync("en-GB", Cancel));
        Assert.DoesNotContain(offered.InForce, w => w.Subject == ConsentSubject.Messages);
    }

    [Fact]
    public async Task New_words_never_change_what_was_agreed()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await clinic.UseAsync<WordsSlice, WordsSlice.Outcome>(
            _scene.AsOwner(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        Subject = ConsentSubject.Photos,
                        Language = "en-GB",
                        Number = 1,
                        Words = "New words",
                    },
                    Cancel
                )
        );

        var screen = await OpenAsync(clinic);

        Assert.Equal(
            (2, "New words"),
            screen.Standing.Where(s => s.Subject == ConsentSubject.Photos).Select(s => (s.TextNumber, s.Words)).Single()
        );
        Assert.NotEqual("New words", screen.History.Single().Words);
        await Refused.SayingAsync(
            "The words were changed meanwhile. Read the new ones to the client and ask again.",
            () => SaveAsync(clinic, ConsentSubject.Photos, given: true, number: 1)
        );
    }

    [Fact]
    public async Task The_program_can_neither_change_nor_remove_a_line()
    {
        await using var clinic = await _scene.OpenAsync(server);

        foreach (
            var deed in new[]
            {
                "update consents set given = false",
                "delete from consents",
                "delete from consent_texts",
                "delete from erasures",
            }
        )
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() =>
                clinic.ReadAsync(db => db.Database.ExecuteSqlRawAsync(deed, Cancel))
            );
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        }
    }

    [Fact]
    public async Task Nobody_of_another_salon_reads_or_takes_a_consent()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var other = clinic.Acting(_scene.Given.DeskThere, _scene.Given.There);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(other, s => s.OpenAsync(_scene.Client.Id, Cancel)));
    }

    private async Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        (
            await clinic.UseAsync<Slice, Slice.Screen?>(
                clinic.Acting(_scene.Given.Desk, _scene.Given.Here),
                s => s.OpenAsync(_scene.Client.Id, Cancel)
            )
        )!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, ConsentSubject subject, bool given, int number) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_scene.Given.Desk, _scene.Given.Here),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = _scene.Client.Id,
                        Subject = subject,
                        Given = given,
                        Way = ConsentWay.OnPaper,
                        TextNumber = number,
                    },
                    Cancel
                )
        );
}
