namespace HairClinic.Web.Tests.Security;

/// <summary>What an id in an address points at.</summary>
public enum Whose
{
    Client,
    Visit,
    Salon,
    Person,
    Base,
    HoldWindow,
    Workshop,
    Service,
    Product,
    Kind,
    Photo,

    /// <summary>A client's unit.</summary>
    Unit,

    /// <summary>An order to a workshop.</summary>
    Order,

    /// <summary>A name typed to find somebody.</summary>
    Name,

    /// <summary>A word of the program's own.</summary>
    Word,

    /// <summary>A value that points at no row, or opens nothing by itself.</summary>
    Nobodys,
}
