namespace HairClinic.Web.Data.Maps;

public sealed class ClientMap() : FencedMap<Client>("clients")
{
    public const string CodeOnce = "ux_clients_code";

    protected override void Map(EntityTypeBuilder<Client> builder)
    {
        builder.Property(x => x.PreferredDays).HasConversion(d => d.Bits, b => new WeekdaySet(b));
        builder.Refers<Client, Salon>(x => x.HomeSalonId);
        builder.Refers<Client, Client>(x => x.MergedIntoId);
        builder.HasIndex(x => new { x.PracticeId, x.Code }).IsUnique().HasDatabaseName(CodeOnce);
        builder.HasIndex(x => new { x.PracticeId, x.HomeSalonId });
        builder.Contains(x => x.Events, (LifeEvent e) => e.ClientId);
        builder.Contains(x => x.CareFacts, (CareFact f) => f.ClientId);
    }
}
