namespace HairClinic.Web.Fence;

/// <summary>The actor of this request, circuit or job. It is set once, in one place, and never changes.</summary>
public sealed class CurrentActor
{
    private Actor? _actor;

    /// <exception cref="NoActorException">There is no actor.</exception>
    public Actor Actor => _actor ?? throw new NoActorException();

    public Actor? OrNull => _actor;

    /// <exception cref="NoActorException">The one who acts is not a person of the practice.</exception>
    public PersonActor Person => Actor as PersonActor ?? throw new NoActorException();

    /// <exception cref="NoActorException">The one who acts is not a client.</exception>
    public ClientActor Client => Actor as ClientActor ?? throw new NoActorException();

    public void Set(Actor actor)
    {
        if (_actor is not null && _actor != actor)
            throw new InvalidOperationException("The actor of a request or circuit never changes.");
        _actor = actor;
    }
}

/// <summary>A practice's data was asked for without an actor, or with the wrong kind of actor.</summary>
public sealed class NoActorException() : InvalidOperationException("Nobody is signed in here, so nothing can be read.");

/// <summary>The database no longer knows the actor as what they signed in as: they left, their role or salons changed, or the sign-in ended.</summary>
public sealed class StaleActorException(Exception inner) : Exception("Whoever acts is no longer what they signed in as.", inner);
