using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Data.Learning;

/// <summary>One bond's hold or one unit's life as the fit reads it.</summary>
/// <param name="ClientId">Null for a unit of nobody's.</param>
/// <param name="Window">Null where the practice's row has no width: nothing is learnt from it.</param>
public abstract record WearSpell(Guid? ClientId, Spell Spell, WindowPrior? Window, IReadOnlyList<WearColumn> Columns);
