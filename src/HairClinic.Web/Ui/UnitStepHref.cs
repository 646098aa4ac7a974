using HairClinic.Domain.HairSystems;

namespace HairClinic.Web.Ui;

/// <summary>Where a step of a unit is written.</summary>
public static class UnitStepHref
{
    /// <param name="back">Where to go on afterwards; null: the unit's own page.</param>
    /// <param name="clientId">Of a unit of nobody's that is lent or given: to whom.</param>
    public static string For(Guid unitId, UnitStepKind step, string? back = null, Guid? clientId = null)
    {
        if (step == UnitStepKind.Ordered)
            return $"/orders/place-order?unit={unitId}";
        var whose = clientId is null ? "" : $"&client={clientId}";
        return $"/units/{unitId}/take-step?step={step}{whose}{(back is null ? "" : $"&back={Uri.EscapeDataString(back)}")}";
    }
}
