namespace HairClinic.Web.Fence;

/// <summary>The database no longer knows the actor as what they signed in as: they left, their role or salons changed, or the sign-in ended.</summary>
public sealed class ActorChangedException(Exception inner) : Exception("Whoever acts is no longer what they signed in as.", inner);
