namespace HairClinic.Web.Fence;

/// <summary>Something asked for a practice's data with nobody acting, or with the wrong kind of actor.</summary>
public sealed class NoActorException() : InvalidOperationException("Nobody is signed in here, so nothing can be read.");
