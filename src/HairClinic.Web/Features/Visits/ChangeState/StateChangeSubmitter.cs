using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Visits;

/// <summary>Sends one tap and says in values what went wrong, for pages that have no form.</summary>
internal static class StateChangeSubmitter
{
    public static async Task<(Refusal? Refused, bool Overtaken)> SendAsync(ChangeState slice, ChangeState.Input input)
    {
        try
        {
            await slice.SaveAsync(Guid.CreateVersion7(), input, CancellationToken.None);
            return (null, false);
        }
        catch (Refusal refusal)
        {
            return (refusal, false);
        }
        catch (OvertakenException)
        {
            return (null, true);
        }
    }
}
