namespace HairClinic.Web.Features.Binder;

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
