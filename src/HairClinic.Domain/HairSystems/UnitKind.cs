using HairClinic.Domain.Practices;

namespace HairClinic.Domain.HairSystems;

/// <summary>A sort of unit as ordered: a base from a workshop.</summary>
public sealed class UnitKind : PracticeOwned
{
    private UnitKind() { }

    public UnitKind(Guid id, string name, Guid baseMaterialId, Guid? workshopId)
    {
        Id = id;
        Edit(name, baseMaterialId, workshopId);
    }

    public string Name { get; private set; } = "";

    public Guid BaseMaterialId { get; private set; }

    /// <summary>Null where the workshop is not known, as in many old books.</summary>
    public Guid? WorkshopId { get; private set; }

    public bool Retired { get; private set; }

    public void Edit(string name, Guid baseMaterialId, Guid? workshopId)
    {
        Name = name.Trim();
        BaseMaterialId = baseMaterialId;
        WorkshopId = workshopId;
    }

    public void Retire() => Retired = true;
}
