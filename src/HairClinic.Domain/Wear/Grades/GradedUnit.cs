using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>A unit as the link between grades and lives is learnt from it.</summary>
/// <param name="Life">In worn days.</param>
/// <param name="Window">Of its kind.</param>
/// <param name="Centre">Of ln T as the fit without grades has it.</param>
/// <param name="Tau">eˢ·σ of the same fit; with the spread of the client's effect where that was not learnt.</param>
public sealed record GradedUnit(Spell Life, WindowPrior Window, double Centre, double Tau, UnitGrades Grades)
{
    /// <summary>Its end is known, exactly or between two looks or before one.</summary>
    public bool HasEnded => Life.End != SpellEnd.After;
}
