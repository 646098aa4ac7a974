namespace HairClinic.Domain.Replacement;

/// <summary>How long the practice's units took from arrival until they were bonded, as the nightly run read it. One row a practice.</summary>
public sealed class StoredPreparation : PracticeOwned
{
    /// <summary>Units older than the newest so many say nothing about how the practice works now.</summary>
    public const int Most = 200;

    private StoredPreparation() { }

    public StoredPreparation(Guid id) => Id = id;

    public LocalDate DataCut { get; private set; }

    /// <summary>Days of units that were bonded, the newest last.</summary>
    public double[] Taken { get; private set; } = [];

    /// <summary>Days that units have waited that were not bonded by the cut.</summary>
    public double[] Waited { get; private set; } = [];

    /// <summary>As it was calculated from them; see <see cref="PreparationTime"/>.</summary>
    public double[] Learnt { get; private set; } = [];

    /// <summary>Read as it is kept; calculated where the practice's setting has changed since.</summary>
    public PreparationTime UnderSetting(int settingDays) =>
        PreparationTime.FromStoredValues(settingDays, Learnt) ?? PreparationTime.Learn(settingDays, Taken, Waited);

    public void LearnFrom(LocalDate dataCut, int settingDays, double[] taken, double[] waited)
    {
        DataCut = dataCut;
        Taken = taken.Length > Most ? taken[^Most..] : taken;
        Waited = waited;
        Learnt = PreparationTime.Learn(settingDays, Taken, Waited).ToStoredValues();
    }
}
