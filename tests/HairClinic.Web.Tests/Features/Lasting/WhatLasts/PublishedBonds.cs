using System.Globalization;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Tests.Layout;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Lasting.WhatLasts;

/// <summary>
/// Freireich et al. 1963, remission times under 6-MP and placebo in weeks (leukaemia_6mp.csv, its first line names the source), laid as
/// bonds with two adhesives: a relapse is a lift whose day is known, a censored time a bond that came off sound.
/// </summary>
internal static class PublishedBonds
{
    public const string Drug = "Harbour film";
    public const string Control = "Quarry coat";

    /// <param name="dayKnown">Else each lift is known only to the week before it.</param>
    public static void Lay(Scene scene, Salon salon, bool dayKnown = true)
    {
        var kind = scene.AddUnitKind("Lace front", "French lace", "Harbour workroom");
        var adhesives = new Dictionary<string, Product>
        {
            ["6-MP"] = scene.AddProduct(Drug, ProductKind.Adhesive, "acrylic", "HF-1"),
            ["control"] = scene.AddProduct(Control, ProductKind.Adhesive, "acrylic", "QC-1"),
        };
        var today = salon.DayOf(scene.Now);
        foreach (var ((weeks, ended, treat), number) in Rows().Select((row, i) => (row, i)))
        {
            var client = scene.AddClient($"P{number:00}", "Person", salon);
            var off = today.PlusDays(-1);
            var on = off.PlusWeeks(-weeks);
            var unit = scene.AddUnit(client, kind, on.PlusDays(-1));
            var bond = scene.AddBond(client, unit, on, adhesives[treat]);
            if (ended && !dayKnown && weeks > 1)
                bond.MarkSeenSound(off.PlusWeeks(-1));
            if (ended)
                bond.ReportLift(new Lift(off, dayKnown ? off : null, Zone: null, SpotFixed: false));
            bond.Remove(off, ended ? RemovalReason.Lifted : RemovalReason.Scheduled);
            unit.TakeOff();
        }
    }

    private static IEnumerable<(int Weeks, bool Ended, string Treat)> Rows() =>
        File.ReadLines(Path.Combine(SourceTree.Root, "tests", "HairClinic.Domain.Tests", "Reference", "leukaemia_6mp.csv"))
            .Where(line => !line.StartsWith('#') && !line.StartsWith("pair", StringComparison.Ordinal))
            .Select(line => line.Split(','))
            .Select(cells => (int.Parse(cells[1], CultureInfo.InvariantCulture), cells[2] == "1", cells[3]));
}
