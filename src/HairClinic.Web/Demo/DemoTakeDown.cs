using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Binder;

namespace HairClinic.Web.Demo;

/// <summary>What was seen when a unit came off, which an old binder has no column for.</summary>
/// <param name="WaitsKept">Of the bond that was made at that visit; null where none was, or nobody wrote it down.</param>
public sealed record DemoTakeDown(VisitRow Visit, BondRow Removed, InspectionGrades Grades, bool? WaitsKept);
