using HairClinic.Web.Fence;
using NodaTime;
using Consents = HairClinic.Web.Features.MyHair.MyConsents;
using Dates = HairClinic.Web.Features.MyHair.DatesFile;
using First = HairClinic.Web.Features.MyHair.MyHair;
using Own = HairClinic.Web.Features.MyHair.MyUnits;
using Photos = HairClinic.Web.Features.MyHair.MyPhotos;
using Seen = HairClinic.Web.Features.MyHair.WhoSawMine;
using Take = HairClinic.Web.Features.MyHair.TakeMyData;
using WearLineData = HairClinic.Domain.Wear.WearLineData;

namespace HairClinic.Web.Tests.Features.MyHair;

/// <summary>What a client's sign-in gets from the pages of its own: the dates, and each thing that was confided.</summary>
public sealed record OwnReach(bool Dates, bool Photos, bool Units, bool Consents, bool WhoSaw, bool TakeOut)
{
    public static readonly OwnReach DatesOnly = new(true, false, false, false, false, false);
    public static readonly OwnReach Everything = new(true, true, true, true, true, true);

    public static async Task<OwnReach> OfAsync(TestClinic clinic, ClientActor actor)
    {
        var cancel = TestContext.Current.CancellationToken;
        var first = await clinic.UseAsync<First, First.Screen?>(actor, s => s.OpenAsync(cancel));
        var calendar = await clinic.UseAsync<Dates, string?>(actor, s => s.OpenAsync(cancel));
        var photos = await clinic.UseAsync<Photos, Photos.Screen?>(actor, s => s.OpenAsync(null, cancel));
        var units = await clinic.UseAsync<Own, WearLineData?>(actor, s => s.OpenAsync(cancel));
        var consents = await clinic.UseAsync<Consents, Consents.Screen?>(actor, s => s.OpenAsync(cancel));
        var seen = await clinic.UseAsync<Seen, Seen.Screen?>(actor, s => s.OpenAsync(null, cancel));
        using var file = new MemoryStream();
        var took = await clinic.UseAsync<Take, bool>(actor, s => s.WriteAsync(() => file, cancel));
        return new(
            first?.Bond is not null && first.Visit is not null && calendar is not null,
            photos?.Rows.Count > 0,
            units?.Lanes.Count > 0,
            consents?.History.Count > 0,
            seen is not null,
            took && file.Length > 0
        );
    }
}
