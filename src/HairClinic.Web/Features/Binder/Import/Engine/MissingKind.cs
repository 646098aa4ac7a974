namespace HairClinic.Web.Features.Binder.Import.Engine;

public enum MissingKind
{
    Workshop,
    Base,
    UnitKind,
    Product,
    Lot,
    Service,
    Stylist,
    Chair,
}
