using Microsoft.EntityFrameworkCore.Design;

namespace HairClinic.Web.Data;

/// <summary>Lets the migrations tool build the model; no server is asked.</summary>
public sealed class DesignTimeClinicDbFactory : IDesignTimeDbContextFactory<ClinicDb>
{
    public ClinicDb CreateDbContext(string[] args) => new(ClinicDbOptions.For("Host=design-time"));
}
