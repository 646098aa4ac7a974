namespace HairClinic.Domain.HairSystems;

/// <summary>A kind of unit as ordered: a base from a workshop.</summary>
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

    /// <summary>Days from order to arrival in half of the orders; the practice's row, common practice until its own orders say better.</summary>
    public int LeadHalfDays { get; private set; } = 56;

    /// <summary>Days from order to arrival in nine of ten orders.</summary>
    public int LeadNineInTenDays { get; private set; } = 77;

    /// <summary>More spares are never kept.</summary>
    public const int MostSpares = 2;

    /// <summary>Units always ready beside the one worn; 0 where the chance of a gap alone says when to order.</summary>
    public int Spares { get; private set; }

    public bool Retired { get; private set; }

    public void Edit(string name, Guid baseMaterialId, Guid? workshopId)
    {
        Name = name.Trim();
        BaseMaterialId = baseMaterialId;
        WorkshopId = workshopId;
    }

    /// <exception cref="Refusal">The longer time is not longer, or beyond two years.</exception>
    public void SetLeadTimes(int leadHalfDays, int leadNineInTenDays)
    {
        if (leadHalfDays < 1 || leadNineInTenDays <= leadHalfDays || leadNineInTenDays > 730)
            throw new Refusal("Half of the orders take at least one day, nine in ten take longer, and no more than 730 days.");
        (LeadHalfDays, LeadNineInTenDays) = (leadHalfDays, leadNineInTenDays);
    }

    /// <exception cref="Refusal">Fewer than none or more than two.</exception>
    public void KeepSpares(int spares)
    {
        if (spares is < 0 or > MostSpares)
            throw new Refusal("Keep no spare, one or two.");
        Spares = spares;
    }

    public void Retire() => Retired = true;
}
