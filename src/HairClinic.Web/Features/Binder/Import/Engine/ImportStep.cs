using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Features.Binder.Sheets.Cells;
using HairClinic.Web.Features.Binder.Sheets.Columns;

namespace HairClinic.Web.Features.Binder.Import.Engine;

/// <summary>One sheet to bring, with everything a person decided about how to read it.</summary>
public sealed record ImportStep(Sheet Sheet, ColumnMapping Mapping, SheetConventions Conventions)
{
    public SheetKind Kind => Mapping.Kind;
}
