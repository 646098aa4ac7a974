using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Learning;

/// <summary>Dates that wait for somebody to say whether they are right, of units and bonds that whoever asks may see.</summary>
public static class OpenDateChecks
{
    private static readonly UnitState[] InFlight = [.. Enum.GetValues<UnitState>().Where(s => s.IsInFlight())];

    /// <summary>What was corrected since is not asked any more, although the night's run has not been there yet.</summary>
    public static IQueryable<DateCheck> Query(ClinicDb db, PersonActor person)
    {
        // Closures are entered by whoever keeps the workshops.
        var manages = person.StaffRole is StaffRole.Owner or StaffRole.Manager;
        return db
            .DateChecks.AsNoTracking()
            .Where(c => c.Answer == null)
            .Where(c =>
                manages && c.Kind == DateCheckKind.WorkshopClosed
                || c.Kind == DateCheckKind.OrderTook
                    && db.HairSystems.Any(u => u.Id == c.HairSystemId && u.Dates.OrderedOn == c.From && u.Dates.ArrivedOn == c.Until)
                || c.Kind == DateCheckKind.OrderWaiting
                    && db.HairSystems.Any(u =>
                        u.Id == c.HairSystemId && InFlight.Contains(u.State) && (u.Dates.OrderedOn == c.From || u.RemadeTimes > 0)
                    )
                || c.Kind == DateCheckKind.BondHeld && db.Bonds.Any(b => b.Id == c.BondId && b.AppliedOn == c.From)
                || c.Kind == DateCheckKind.UnitLasted && db.HairSystems.Any(u => u.Id == c.HairSystemId && u.Dates.RetiredOn == c.Until)
            );
    }

    /// <summary>Whether an order is still on its way; with what was corrected since.</summary>
    public static IQueryable<DateCheck> OfOrdersWaitedFor(ClinicDb db) =>
        db.DateChecks.Where(c => c.Kind == DateCheckKind.OrderWaiting && c.Answer == null);
}
