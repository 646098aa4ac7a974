namespace HairClinic.Web.Data.Maps;

public sealed class UnitLoanMap() : FencedMap<UnitLoan>("unit_loans")
{
    /// <summary>A unit is with one client at a time.</summary>
    public const string OpenPerUnit = "ix_unit_loans_open_per_unit";

    protected override void Map(EntityTypeBuilder<UnitLoan> builder)
    {
        builder.AddReference<UnitLoan, HairSystem>(x => x.HairSystemId);
        builder.AddReference<UnitLoan, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.HairSystemId }).IsUnique().HasFilter("back_on is null").HasDatabaseName(OpenPerUnit);
    }
}
