using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What the practice calls its adhesives, lots, bases, workshops, kinds and salons.</summary>
internal static class LastingNames
{
    public static Task<Dictionary<Guid, string>> LoadAsync(ClinicDb db, LastingSide side, CancellationToken cancellation) =>
        (
            side switch
            {
                LastingSide.Workshop => db.Workshops.Select(w => new { w.Id, w.Name }),
                LastingSide.Base => db.BaseMaterials.Select(b => new { b.Id, b.Name }),
                LastingSide.Kind => db.UnitKinds.Select(k => new { k.Id, k.Name }),
                LastingSide.Salon => db.Salons.Select(s => new { s.Id, s.Name }),
                LastingSide.Lot => from lot in db.ProductLots
                join product in db.Products on lot.ProductId equals product.Id
                select new { lot.Id, Name = product.Name + ", " + lot.Code },
                _ => db.Products.Select(p => new { p.Id, p.Name }),
            }
        ).ToDictionaryAsync(n => n.Id, n => n.Name, cancellation);

    /// <summary>Columns of the model by their names there.</summary>
    public static async Task<Dictionary<string, string>> LoadCovariateNamesAsync(ClinicDb db, CancellationToken cancellation)
    {
        var names = new Dictionary<string, string>();
        foreach (
            var (side, prefix) in new[]
            {
                (LastingSide.Adhesive, CovariateValue.AdhesivePrefix),
                (LastingSide.Base, CovariateValue.BasePrefix),
                (LastingSide.Workshop, CovariateValue.WorkshopPrefix),
            }
        )
        {
            foreach (var (id, name) in await LoadAsync(db, side, cancellation))
                names[prefix + id] = name;
        }
        return names;
    }
}
