using Microsoft.AspNetCore.Components.Server.Circuits;

namespace HairClinic.Web.Accounts;

/// <summary>When the person at an open screen last did something. The screen's own ticking does not count.</summary>
public sealed class CircuitActivityTracker(IClock clock) : CircuitHandler
{
    public Instant Last { get; private set; } = clock.GetCurrentInstant();

    public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(
        Func<CircuitInboundActivityContext, Task> next
    ) =>
        context =>
        {
            Last = clock.GetCurrentInstant();
            return next(context);
        };
}
