using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Language;
using Slice = HairClinic.Web.Features.Privacy.EditConsentWords;

namespace HairClinic.Web.Tests.Features.Privacy.EditConsentWords;

public sealed class EditConsentWordsTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    [Fact]
    public async Task The_words_the_program_brings_become_the_first_edition()
    {
        await using var clinic = await _scene.OpenAsync(server);

        var outcome = await SaveAsync(clinic, ConsentSubject.PatchTest, 1);

        Assert.Equal(2, outcome.Number);
    }

    [Fact]
    public async Task Who_writes_over_words_they_have_not_seen_is_told()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await SaveAsync(clinic, ConsentSubject.PatchTest, 1);

        await Refused.SayingAsync(
            "Somebody else wrote new words meanwhile. Look at them before you write over them.",
            () => SaveAsync(clinic, ConsentSubject.PatchTest, 1)
        );
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, ConsentSubject subject, int number) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            _scene.AsOwner(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        Subject = subject,
                        Language = "en-GB",
                        Number = number,
                        Words = "I agree.",
                    },
                    PrivacyScene.Cancel
                )
        );
}
