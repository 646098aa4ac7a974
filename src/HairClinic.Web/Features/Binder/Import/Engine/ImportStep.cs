using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>One sheet to bring, with everything a person decided about how to read it.</summary>
public sealed record ImportStep(Sheet Sheet, ColumnMapping Mapping, SheetConventions Conventions)
{
    public SheetKind Kind => Mapping.Kind;
}
