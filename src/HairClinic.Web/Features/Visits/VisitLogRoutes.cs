namespace HairClinic.Web.Features.Visits;

/// <summary>Where a visit is logged: a bond is made or it is not.</summary>
internal static class VisitLogRoutes
{
    public static bool IsBondingPurpose(ServicePurpose purpose) => purpose is ServicePurpose.Rebond or ServicePurpose.FirstFitting;

    public static string TakeDownPathFor(Guid visitId) => $"/visits/{visitId}/log-take-down";

    public static string PathFor(Guid visitId, ServicePurpose purpose) =>
        $"/visits/{visitId}/{(IsBondingPurpose(purpose) ? "log-rebond" : "log-visit")}";
}
