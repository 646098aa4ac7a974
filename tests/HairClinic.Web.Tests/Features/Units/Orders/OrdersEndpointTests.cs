using System.Net;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Security;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Units.Orders;

public sealed class OrdersEndpointTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_manager_takes_the_list_along_with_codes_and_no_names_and_a_desk_does_not()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        await site.InPracticeAsync(
            async (_, db) =>
            {
                foreach (var guest in new[] { site.Here.Own, site.Elsewhere.Own })
                {
                    var draft = new HairSystem(
                        Guid.CreateVersion7(),
                        $"Draft-{guest.Client.Code}",
                        guest.Client.Id,
                        site.Here.Kind,
                        new LocalDate(2027, 1, 5)
                    );
                    draft.SetPrice(60_050, "GBP");
                    db.HairSystems.Add(draft);
                }
                return await db.SaveChangesAsync(Cancel);
            }
        );

        using var manager = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]));
        var sheet = await manager.GetStringAsync("/orders/orders.csv?part=drafts", Cancel);

        var lines = sheet.TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("unit,client code,kind,workshop,order,state,ordered on,", lines[0], StringComparison.Ordinal);
        var code = site.Here.Own.Client.Code;
        Assert.StartsWith($"Draft-{code},{code},Everyday A,Workshop A,,", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(",0,600.50,GBP", lines[1], StringComparison.Ordinal);
        Assert.DoesNotContain("Marchbanks", sheet, StringComparison.Ordinal);

        using var desk = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));
        using var refused = await desk.GetAsync("/orders/orders.csv", Cancel);
        Assert.NotEqual(HttpStatusCode.OK, refused.StatusCode);
    }
}
