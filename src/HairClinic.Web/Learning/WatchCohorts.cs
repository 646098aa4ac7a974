using System.Linq.Expressions;
using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>What alarms of the watch named, as whoever predicts reads it.</summary>
public static class WatchCohorts
{
    public static readonly Expression<Func<WatchAlarm, WatchedCohort>> FromAlarm = a => new WatchedCohort(
        a.Id,
        a.StreamId,
        a.CohortFrom,
        a.CohortThrough
    );

    /// <summary>Alarms whose units or bonds share a shift: those that were none are left out.</summary>
    public static IQueryable<WatchAlarm> Alarms(ClinicDb db) =>
        db.WatchAlarms.Where(a => a.End == null || a.End != WatchAlarmEnd.FalseAlarm);

    /// <summary>Of them those that name bonds.</summary>
    public static IQueryable<WatchAlarm> BondAlarms(ClinicDb db) => Alarms(db).Where(a => a.Kind != WatchedStreamKind.Workshop);
}
