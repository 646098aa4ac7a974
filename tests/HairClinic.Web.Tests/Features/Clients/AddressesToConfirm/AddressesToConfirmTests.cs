using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Binder;
using HairClinic.Web.Tests.Features.MyHair;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;
using ImportSlice = HairClinic.Web.Features.Binder.Import;
using Slice = HairClinic.Web.Features.Clients.AddressesToConfirm;

namespace HairClinic.Web.Tests.Features.Clients.AddressesToConfirm;

public sealed class AddressesToConfirmTests(PgServer server)
{
    private readonly KeyScene _scene = new();

    [Fact]
    public async Task After_an_import_all_wait_and_whoever_brought_them_confirms_none()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var manager = _scene.Of(clinic, StaffRole.Manager);
        var file = Binders.Csv(
            "code,name,home salon,email",
            "I-1,Ida Wren,Elm Row,ida@example.test",
            "I-2,Oto Marsh,Elm Row,Oto@Example.test",
            "I-3,Uma Field,Elm Row,"
        );
        await clinic.UseAsync<ImportSlice, ImportSlice.Outcome>(
            manager,
            s => s.SaveAsync(Guid.CreateVersion7(), Binders.Draft(SheetKind.Clients, file), createMissing: false, Cancel)
        );

        var forManager = await OpenAsync(clinic, manager);
        var forStylist = await OpenAsync(clinic, _scene.Of(clinic, StaffRole.Stylist));

        Assert.Equal(["ida@example.test", "oto@example.test"], forManager.Select(r => r.Email).Order());
        Assert.All(forManager, r => Assert.Equal((AddressConfirmerEligibility.EnteredByThem, "Marn Holt"), (r.Right, r.By)));
        Assert.All(forStylist, r => Assert.Equal(AddressConfirmerEligibility.Free, r.Right));
        Assert.Equal(
            OwnReach.DatesOnly with
            {
                Dates = false,
            },
            await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, "oto@example.test"))!)
        );
    }

    [Fact]
    public async Task Only_clients_one_may_open_are_named_and_what_was_denied_stands_first()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "first@example.test", await IdOfAsync(clinic, "Q-7720"));
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "second@example.test");
        var letter = Assert.Single(await TellAsync(clinic), l => l.To == Theirs);
        await clinic.UseAsync<Web.Features.MyHair.MyNewAddress, ClientPageAccessLevel?>(
            clinic.Job,
            s => s.SaveAsync(TokenIn(letter), yes: false, Cancel)
        );

        Assert.Empty(await OpenAsync(clinic, _scene.StylistThere(clinic)));
        var rows = await OpenAsync(clinic, _scene.Of(clinic, StaffRole.Stylist));
        Assert.Equal([("second@example.test", true), ("first@example.test", false)], rows.Select(r => (r.Email, r.Denied)));
    }

    private static Task<IReadOnlyList<UnconfirmedAddressRow>> OpenAsync(TestClinic clinic, PersonActor actor) =>
        clinic.UseAsync<Slice, IReadOnlyList<UnconfirmedAddressRow>>(actor, s => s.OpenAsync(Cancel));
}
