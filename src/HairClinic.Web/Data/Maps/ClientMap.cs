namespace HairClinic.Web.Data.Maps;

public sealed class ClientMap() : FencedMap<Client>("clients")
{
    public const string CodeOnce = "ux_clients_code";

    protected override void Map(EntityTypeBuilder<Client> builder)
    {
        builder.Property(x => x.PreferredDays).HasConversion(d => d.Bits, b => new WeekdaySet(b));
        builder.AddReference<Client, Salon>(x => x.HomeSalonId);
        builder.AddReference<Client, Client>(x => x.MergedIntoId);
        builder.HasIndex(x => new { x.PracticeId, x.Code }).IsUnique().HasDatabaseName(CodeOnce);
        builder.HasIndex(x => new { x.PracticeId, x.HomeSalonId });
        builder.AddChildren(x => x.Events, (LifeEvent e) => e.ClientId);
        builder.AddChildren(x => x.CareFacts, (CareFact f) => f.ClientId);
    }
}
