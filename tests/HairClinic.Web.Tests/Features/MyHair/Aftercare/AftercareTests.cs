using HairClinic.Domain.Clients;
using Slice = HairClinic.Web.Features.MyHair.Aftercare;

namespace HairClinic.Web.Tests.Features.MyHair.Aftercare;

public sealed class AftercareTests(PgServer server)
{
    [Fact]
    public async Task The_practices_own_words_are_shown_in_the_language_they_were_written_in()
    {
        var own = new OwnScene();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                own.Lay(scene);
                scene.Db.OwnTexts.Add(new OwnText(Guid.CreateVersion7(), CareTopic.Washing, "en", "Our way of washing."));
                scene.Db.OwnTexts.Add(new OwnText(Guid.CreateVersion7(), CareTopic.Heat, "es", "A nuestra manera."));
            }
        );

        var texts = await clinic.UseAsync<Slice, IReadOnlyDictionary<CareTopic, string>>(
            own.Acting(clinic),
            slice => slice.OpenAsync("en", TestContext.Current.CancellationToken)
        );

        Assert.Equal("Our way of washing.", Assert.Single(texts).Value);
    }
}
