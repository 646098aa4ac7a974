using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Web.Learning;

/// <summary>How long one bond held.</summary>
public sealed record HoldSpell(
    Guid BondId,
    LocalDate AppliedOn,
    Guid BaseMaterialId,
    Guid? AdhesiveId,
    Guid? LotId,
    Guid? Client,
    Spell Spell,
    WindowPrior? Window,
    IReadOnlyList<WearCovariate> Columns
) : WearSpell(Client, Spell, Window, Columns);
