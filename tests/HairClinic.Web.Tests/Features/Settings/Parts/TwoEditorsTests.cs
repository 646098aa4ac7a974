using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using ClientSlice = HairClinic.Web.Features.Clients.EditClient;
using HoldWindowSlice = HairClinic.Web.Features.Settings.EditHoldWindow;
using Kinds = HairClinic.Web.Features.Settings.EditUnitKind;
using Spares = HairClinic.Web.Features.Settings.KeepSpares;
using Staff = HairClinic.Web.Features.Settings.EditPerson;

namespace HairClinic.Web.Tests.Features.Settings.Parts;

/// <summary>Two people have the same form open. Whoever saves second sees what the first changed, and undoes nothing unseen.</summary>
public sealed class TwoEditorsTests(PgServer server) : PracticeTest(server)
{
    private const string Overtaken = "Someone else changed this meanwhile";

    [Fact]
    public async Task Of_a_sort_of_unit_base_and_workshop_count()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));
        var id = Scene.Kinds[0].Id;
        var silk = Scene.Bases.Single(b => b.Name == "Silk top").Id;
        await EditorPage<EditUnitKindPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", id),
            async mine =>
            {
                mine.Type("Name", "Sunday");
                var theirs = (await OwnerAsync<Kinds, Kinds.Screen?>(clinic, s => s.OpenAsync(id, Cancel)))!.Input;
                (theirs.BaseMaterialId, theirs.WorkshopId) = (silk, null);
                await OwnerAsync<Kinds, Kinds.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: Overtaken);
                Assert.Equal(
                    [
                        "Base: was French lace, now Silk top. You did not change this; theirs stands in the form.",
                        "Workshop: was Workshop North, now workshop not known. You did not change this; theirs stands in the form.",
                    ],
                    mine.Meanwhile
                );
                await mine.SaveAndGoAsync("/practice/unit-kinds");
            }
        );

        var kind = await clinic.ReadAsync(db => db.UnitKinds.SingleAsync(k => k.Id == id, Cancel));
        Assert.Equal(("Sunday", silk, null), (kind.Name, kind.BaseMaterialId, kind.WorkshopId));
    }

    [Fact]
    public async Task Of_spares_each_kind_counts_by_itself()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            scene.AddUnitKind("Everyday", "French lace", "Workshop North");
            scene.AddUnitKind("Sunday", "Silk top", "Workshop North");
        });
        await EditorPage<KeepSparesPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", Guid.Empty),
            async mine =>
            {
                mine.Page.Find("input[name='Lines[0].Spares'][value='2']").Change("2");
                var theirs = (await OwnerAsync<Spares, Spares.Screen>(clinic, s => s.OpenAsync(Cancel))).Input;
                (theirs.Lines[0].Spares, theirs.Lines[1].Spares) = (1, 1);
                await OwnerAsync<Spares, Spares.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: Overtaken);
                Assert.Equal(
                    [
                        "Spares: was Everyday: Order by the chance of a gap, now Everyday: Always one ready. You typed Everyday: Always two ready.",
                        "Spares: was Sunday: Order by the chance of a gap, now Sunday: Always one ready. You did not change this; theirs stands in the form.",
                    ],
                    mine.Meanwhile
                );
                await mine.SaveAndGoAsync("/practice/unit-kinds");
            }
        );

        var kept = await clinic.ReadAsync(db => db.UnitKinds.ToDictionaryAsync(k => k.Name, k => k.Spares, Cancel));
        Assert.Equal((2, 1), (kept["Everyday"], kept["Sunday"]));
    }

    [Fact]
    public async Task Of_a_hold_window_base_and_adhesive_count_and_weeks_clash()
    {
        await using var clinic = await OpenAsync();
        var window = await clinic.ReadAsync(db =>
            db.HoldWindowRules.FirstAsync(r => r.BaseMaterialId != null && r.AdhesiveId == null, Cancel)
        );
        var named = Scene.Bases.Single(b => b.Id == window.BaseMaterialId).Name;
        await EditorPage<EditHoldWindowPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", window.Id),
            async mine =>
            {
                mine.Type("LatestWeeks", $"{window.LatestWeeks + 2}");
                var theirs = (
                    await OwnerAsync<HoldWindowSlice, HoldWindowSlice.Screen?>(clinic, s => s.OpenAsync(window.Id, Cancel))
                )!.Input;
                theirs.BaseMaterialId = null;
                theirs.Attachment = Domain.Bonding.Attachment.Clips;
                theirs.LatestWeeks = window.LatestWeeks + 1;
                await OwnerAsync<HoldWindowSlice, HoldWindowSlice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: Overtaken);
                Assert.Contains($"Base: was {named}, now any base. You did not change this; theirs stands in the form.", mine.Meanwhile);
                Assert.Contains(
                    $"Latest week: was {window.LatestWeeks}, now {window.LatestWeeks + 1}. You typed {window.LatestWeeks + 2}.",
                    mine.Meanwhile
                );
                await mine.Page.Find("[aria-labelledby=changed] button").ClickAsync();
                Assert.Equal($"{window.LatestWeeks + 1}", mine.Page.Find("#f-LatestWeeks").GetAttribute("value"));
                Assert.DoesNotContain(mine.Meanwhile, line => line.Contains("Latest week", StringComparison.Ordinal));
            }
        );
    }

    [Fact]
    public async Task A_window_someone_took_out_is_said_to_be_gone()
    {
        await using var clinic = await OpenAsync();
        var window = await clinic.ReadAsync(db => db.HoldWindowRules.FirstAsync(r => r.BaseMaterialId != null, Cancel));
        await EditorPage<EditHoldWindowPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", window.Id),
            async mine =>
            {
                var theirs = (
                    await OwnerAsync<HoldWindowSlice, HoldWindowSlice.Screen?>(clinic, s => s.OpenAsync(window.Id, Cancel))
                )!.Input;
                theirs.Retire = true;
                await OwnerAsync<HoldWindowSlice, HoldWindowSlice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: "Someone else took this out meanwhile");
            }
        );
    }

    [Fact]
    public async Task Someone_who_left_meanwhile_is_said_to_be_gone()
    {
        await using var clinic = await OpenAsync();
        await EditorPage<EditPersonPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", Stylist.Id),
            async mine =>
            {
                var theirs = (await OwnerAsync<Staff, Staff.Screen?>(clinic, s => s.OpenAsync(Stylist.Id, Cancel)))!.Input;
                theirs.Retire = true;
                await OwnerAsync<Staff, Staff.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: "Someone else took this out meanwhile");
            }
        );
    }

    [Fact]
    public async Task Of_a_person_salons_and_services_are_named()
    {
        await using var clinic = await OpenAsync();
        var service = Scene.Services[0];
        await EditorPage<EditPersonPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("Id", Stylist.Id),
            async mine =>
            {
                mine.Type("Name", "Sten Itō");
                var theirs = (await OwnerAsync<Staff, Staff.Screen?>(clinic, s => s.OpenAsync(Stylist.Id, Cancel)))!.Input;
                var could = theirs.Skills.Contains(service.Id);
                if (!theirs.Skills.Remove(service.Id))
                    theirs.Skills.Add(service.Id);
                theirs.Salons.Add(Other.Id);
                await OwnerAsync<Staff, Staff.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: Overtaken);
                Assert.Equal(
                    [
                        "Works in: Canal Side: was no, now yes. You did not change this; theirs stands in the form.",
                        $"May do alone: {service.Name}: was {(could ? "yes" : "no")}, now {(could ? "no" : "yes")}. You did not change this; theirs stands in the form.",
                    ],
                    mine.Meanwhile
                );
                await mine.SaveAndGoAsync("/practice/people");
            }
        );

        var person = await clinic.ReadAsync(db => db.People.Include(p => p.Salons).SingleAsync(p => p.Id == Stylist.Id, Cancel));
        Assert.Equal("Sten Itō", person.Name);
        Assert.Contains(person.Salons, s => s.SalonId == Other.Id);
    }

    [Fact]
    public async Task Of_a_client_each_field_is_put_together_with_what_the_desk_typed()
    {
        Client ada = null!;
        await using var clinic = await OpenAsync(scene => ada = scene.AddClient("C-1", "Ada Fenwick", Salon));
        await EditorPage<EditClientPage>.OpenAsync(
            clinic,
            AsOwner(clinic),
            ("ClientId", ada.Id),
            async mine =>
            {
                mine.Type("Note", "Window seat");
                var theirs = (await OwnerAsync<ClientSlice, ClientSlice.Screen?>(clinic, s => s.OpenAsync(ada.Id, Cancel)))!.Saved;
                (theirs.Note, theirs.WashEveryDays, theirs.HomeSalonId) = ("Corner seat", 14, Other.Id);
                await OwnerAsync<ClientSlice, ClientSlice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), theirs, Cancel));

                await mine.SaveAsync(shows: Overtaken);
                Assert.Equal(
                    [
                        "Home salon: was Elm Row, now Canal Side. You did not change this; theirs stands in the form.",
                        "Wash and style: was at home, now every 14 days. You did not change this; theirs stands in the form.",
                        "Note: was nothing, now Corner seat. You typed Window seat.",
                    ],
                    mine.Meanwhile
                );
                await mine.SaveAndGoAsync("/card");
            }
        );

        var kept = await clinic.ReadAsync(db => db.Clients.SingleAsync(c => c.Id == ada.Id, Cancel));
        Assert.Equal(("Window seat", 14, Other.Id), (kept.Note, kept.WashEveryDays, kept.HomeSalonId));
    }
}
