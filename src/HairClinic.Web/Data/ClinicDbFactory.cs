using HairClinic.Web.Fence;

namespace HairClinic.Web.Data;

/// <summary>
/// Opens a context for the current actor. One context an operation: a circuit lives for hours, a context
/// must not. Without an actor only the unfenced tables (sign-in) can be read.
/// </summary>
public sealed class ClinicDbFactory(DbContextOptions<ClinicDb> options, CurrentActor current)
{
    /// <exception cref="NoActorException">There is no actor.</exception>
    public ClinicDb Open() => new(options, current.Actor);

    /// <summary>
    /// As a job for the actor's practice, where an answer must count what the actor may not see: free slots, clashes, tracing. What is
    /// read through it must not name others' clients, nor depend on what somebody types; the callers are a closed list in a test.
    /// </summary>
    /// <exception cref="NoActorException">There is no actor.</exception>
    public ClinicDb OpenPracticeWide(string job) => new(options, new JobActor(current.Actor.PracticeId, job, current.Actor.Author));

    /// <summary>For sign-in and key storage, before the actor is known.</summary>
    public ClinicDb OpenWithoutActor() => new(options, actor: null);
}
