namespace HairClinic.Domain.Clients;

public enum ClearanceKind
{
    /// <summary>Look twice.</summary>
    Warn,

    /// <summary>Not before someone who may know the reason says so.</summary>
    Block,
}
