using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditProduct;

namespace HairClinic.Web.Tests.Features.Settings.EditProduct;

public sealed class EditProductTests(PgServer server) : PracticeTest(server)
{
    private Product _adhesive = null!;

    [Fact]
    public async Task Lots_are_received_dated_and_finished()
    {
        await using var clinic = await OpenAsync(Lay);
        var input = await OpenFormAsync(clinic, _adhesive.Id);
        input.Lots[0].Finished = true;
        input.Lots.Add(new Slice.LotLine { Code = "A-2", ExpiresOn = new LocalDate(2027, 9, 30) });

        await SaveAsync(clinic, input);

        Assert.Equal(
            [("A-2", false, new LocalDate(2027, 9, 30)), ("A-1", true, null)],
            (await OpenFormAsync(clinic, _adhesive.Id)).Lots.Select(l => (l.Code, l.Finished, l.ExpiresOn))
        );
    }

    [Fact]
    public async Task What_the_label_asks_for_moves_due_dates_and_a_new_name_does_not()
    {
        await using var clinic = await OpenAsync(Lay);
        var renamed = await OpenFormAsync(clinic, _adhesive.Id);
        renamed.Name = "Adhesive A plus";
        await SaveAsync(clinic, renamed);
        Assert.Equal(0, await RefreshesAsync(clinic));
        var labelled = await OpenFormAsync(clinic, _adhesive.Id);
        labelled.LabelCureHours = 48;

        await SaveAsync(clinic, labelled);

        Assert.Equal(1, await RefreshesAsync(clinic));
    }

    [Fact]
    public async Task A_taken_name_or_lot_code_is_refused_and_the_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Lay(scene);
            scene.AddProduct("Adhesive B", ProductKind.Adhesive, "silicone");
        });
        var mine = await OpenFormAsync(clinic, _adhesive.Id);
        var theirs = await OpenFormAsync(clinic, _adhesive.Id);
        theirs.Lots.Add(new Slice.LotLine { Code = "A-2" });
        await SaveAsync(clinic, theirs);
        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));

        var named = await OpenFormAsync(clinic, _adhesive.Id);
        named.Name = "Adhesive B";
        await Refused.SayingAsync("There is a product called {0} already.", () => SaveAsync(clinic, named));
        var coded = await OpenFormAsync(clinic, _adhesive.Id);
        coded.Lots.Add(new Slice.LotLine { Code = "A-1" });
        await Refused.SayingAsync("Two lots of a product cannot share a code.", () => SaveAsync(clinic, coded));
    }

    [Fact]
    public async Task A_product_no_longer_used_stays_in_the_book()
    {
        await using var clinic = await OpenAsync(Lay);
        var input = await OpenFormAsync(clinic, _adhesive.Id);
        input.Retire = true;

        await SaveAsync(clinic, input);

        Assert.True(await clinic.ReadAsync(db => db.Products.AnyAsync(p => p.Id == _adhesive.Id && p.Retired, Cancel)));
    }

    [Theory]
    [InlineData(12, 1)]
    [InlineData(72, 1)]
    [InlineData(36, 0)]
    [InlineData(null, 0)]
    public void A_cure_outside_24_to_48_hours_is_told(int? hours, int errors) =>
        Assert.Equal(errors, new EditProductRules().Validate(new Slice.Input { Name = "Adhesive A", LabelCureHours = hours }).Errors.Count);

    private void Lay(HairClinic.Web.Demo.Scenes.Scene scene) =>
        _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-1");

    private async Task<Slice.Input> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
