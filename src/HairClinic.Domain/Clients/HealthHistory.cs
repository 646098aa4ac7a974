namespace HairClinic.Domain.Clients;

/// <summary>
/// What a client tells of their health at a consultation. It is kept sealed under the client's own key and opens only to
/// those who must know it; what others must know of it are <see cref="Clearance"/>s, which give no reason.
/// </summary>
public sealed record HealthHistory
{
    public string? SinceWhen { get; set; }
    public string? HowFast { get; set; }
    public List<LossSign> Signs { get; set; } = [];
    public string? Medicines { get; set; }
    public string? Surgery { get; set; }
    public string? Illness { get; set; }

    /// <summary>Active radiotherapy of the scalp, or chemotherapy.</summary>
    public bool UnderRadiotherapy { get; set; }

    public bool UnderChemotherapy { get; set; }

    /// <summary>The care team said that bonding is all right.</summary>
    public bool CareTeamAgreed { get; set; }

    /// <summary>Stress or bereavement, if they wish to say.</summary>
    public string? HardTimes { get; set; }

    public string? Treatments { get; set; }
    public string? Allergies { get; set; }
    public List<Reaction> Reactions { get; set; } = [];
    public List<ScalpSign> ScalpToday { get; set; } = [];
    public string? Habits { get; set; }
    public string? Note { get; set; }

    /// <summary>The day they were advised to ask a physician.</summary>
    public LocalDate? AdviceGivenOn { get; set; }

    /// <summary>A sign that goes to a physician is there.</summary>
    public bool CallsForPhysician => Signs.Count > 0 || ScalpToday.Contains(ScalpSign.Infected);

    /// <param name="ProductId">One of the practice's products, where it was one.</param>
    public sealed record Reaction
    {
        public Guid? ProductId { get; set; }
        public string? To { get; set; }
        public string? What { get; set; }
    }
}
