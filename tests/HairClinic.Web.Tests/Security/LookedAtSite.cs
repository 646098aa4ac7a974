namespace HairClinic.Web.Tests.Security;

/// <summary>One site for all tests that only look at it, one after the other.</summary>
public sealed class LookedAtSite(PgServer server) : IAsyncLifetime
{
    public const string Name = nameof(LookedAtSite);

    public ClinicSite Site { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Site = await ClinicSite.OpenAsync(server);

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}

[CollectionDefinition(LookedAtSite.Name)]
public sealed class LookedAtSiteGroup : ICollectionFixture<LookedAtSite>;
