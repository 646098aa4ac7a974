using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace HairClinic.Web.Data;

/// <summary>The practice's book. Every fenced row read through it is of the acting practice, every row added is stamped with it.</summary>
public sealed partial class ClinicDb : IdentityUserContext<AppUser, Guid>, IDataProtectionKeyContext
{
    public ClinicDb(DbContextOptions<ClinicDb> options)
        : this(options, actor: null) { }

    public ClinicDb(DbContextOptions<ClinicDb> options, Actor? actor)
        : base(options)
    {
        Actor = actor;
        ChangeTracker.Tracking += Stamp;
    }

    public Actor? Actor { get; }

    /// <summary>Read by every query filter; without an actor it is the empty id, which owns nothing.</summary>
    public Guid PracticeId => Actor?.PracticeId ?? Guid.Empty;

    /// <summary>Rows with those whose log was taken back: for tracing what was used, and for what moves or counts every row.</summary>
    public IQueryable<T> IncludingTakenBack<T>()
        where T : PracticeOwned => Set<T>().IgnoreQueryFilters([BondMap.Standing]);

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<Enum>().HaveConversion<string>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.HasPostgresExtension("btree_gist");
        AccountMaps.Apply(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(ClinicDb).Assembly);
        foreach (var type in FencedTypes)
            typeof(ClinicDb).GetMethod(nameof(Filter), Instance)!.MakeGenericMethod(type).Invoke(this, [builder]);
    }

    private const System.Reflection.BindingFlags Instance =
        System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.NonPublic;

    /// <summary>Every entity that belongs to a practice.</summary>
    public static IEnumerable<Type> FencedTypes =>
        new[] { typeof(PracticeOwned).Assembly, typeof(ClinicDb).Assembly }
            .SelectMany(a => a.GetTypes())
            .Where(t => t.IsSubclassOf(typeof(PracticeOwned)) && !t.IsAbstract);

    private void Filter<T>(ModelBuilder builder)
        where T : PracticeOwned => builder.Entity<T>().HasQueryFilter("practice", x => x.PracticeId == PracticeId);

    private void Stamp(object? sender, EntityTrackingEventArgs e)
    {
        if (!e.FromQuery && e.State == EntityState.Added && e.Entry.Entity is PracticeOwned owned)
        {
            owned.AssignToPractice(Actor?.PracticeId ?? throw new NoActorException());
            (owned as ActorOwned)?.SetAuthor(Actor.Id);
        }
    }
}
