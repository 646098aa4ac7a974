using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Language;
using HairClinic.Web.Tests.Ui;
using Client = HairClinic.Web.Features.MyHair.Aftercare;
using Slice = HairClinic.Web.Features.Settings.EditAftercare;

namespace HairClinic.Web.Tests.Features.Settings.EditAftercare;

public sealed class EditAftercareTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Clients_read_what_was_written_in_its_own_language_and_the_usual_words_again_when_it_is_emptied()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, "es", "A nuestra manera.");

        Assert.Equal("A nuestra manera.", (await ReadAsync(clinic, "es"))[CareTopic.Washing]);
        Assert.Empty(await ReadAsync(clinic, "en"));
        var topic = (await TopicsAsync(clinic, "es")).Single(t => t.About == CareTopic.Washing);
        await SaveAsync(clinic, "es", " ", topic.Version);
        Assert.Empty(await ReadAsync(clinic, "es"));
    }

    [Fact]
    public async Task The_later_of_two_writers_is_told()
    {
        await using var clinic = await OpenAsync();
        await SaveAsync(clinic, "en", "Mine.");

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, "en", "Theirs, opened when there was nothing."));
        var topic = (await TopicsAsync(clinic, "en")).Single(t => t.About == CareTopic.Washing);
        await SaveAsync(clinic, "en", "", topic.Version);
        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, "en", "Opened before it was emptied.", topic.Version));
    }

    [Fact]
    public async Task A_second_tap_is_one_text()
    {
        await using var clinic = await OpenAsync();
        var key = Guid.CreateVersion7();

        await SaveAsync(clinic, "en", "Mine.", key: key);
        await SaveAsync(clinic, "en", "Mine.", key: key);

        Assert.Equal("Mine.", (await ReadAsync(clinic, "en"))[CareTopic.Washing]);
    }

    [Theory]
    [InlineData("fr", "Words.", nameof(Slice.Input.Language))]
    [InlineData("en", null, nameof(Slice.Input.Words))]
    public void A_language_no_client_reads_and_a_text_too_long_for_a_phone_are_told(string language, string? words, string wrong)
    {
        var input = new Slice.Input
        {
            Topic = CareTopic.Heat,
            Language = language,
            Words = words ?? new string('a', 2001),
        };

        Assert.Equal(wrong, Assert.Single(new EditAftercareRules().Validate(input).Errors).PropertyName);
    }

    [Fact]
    public async Task The_form_shows_the_caution_that_stays_at_the_end()
    {
        await using var ui = new UiTestContext();

        var form = ui.Render<EditAftercareForm>(p => p.Add(f => f.Input, new Slice.Input()));

        Assert.Contains("A product’s label and your local rules come before this.", form.Markup, StringComparison.Ordinal);
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, string language, string words, uint version = 0, Guid? key = null) =>
        ManagerAsync<Slice, Slice.Outcome>(
            clinic,
            s =>
                s.SaveAsync(
                    key ?? Guid.CreateVersion7(),
                    new()
                    {
                        Topic = CareTopic.Washing,
                        Language = language,
                        Version = version,
                        Words = words,
                    },
                    Cancel
                )
        );

    private Task<IReadOnlyList<Slice.Topic>> TopicsAsync(TestClinic clinic, string language) =>
        ManagerAsync<Slice, IReadOnlyList<Slice.Topic>>(clinic, s => s.OpenAsync(language, Cancel));

    private Task<IReadOnlyDictionary<CareTopic, string>> ReadAsync(TestClinic clinic, string language) =>
        ManagerAsync<Client, IReadOnlyDictionary<CareTopic, string>>(clinic, s => s.OpenAsync(language, Cancel));
}
