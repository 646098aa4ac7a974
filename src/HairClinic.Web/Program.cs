using HairClinic.Web.Data;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Features.Accounts;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Practices;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Verbs;

return await CommandLine.RunAsync(args, Build);

static WebApplication Build(string[] hostArguments)
{
    var builder = WebApplication.CreateBuilder(hostArguments);
    builder.Services
        .AddClinicData()
        .AddFence()
        .AddAccounts()
        .AddShell()
        .AddAccountsArea()
        .AddClients();

    var app = builder.Build();
    app.UseShell();
    app.MapAccounts();
    return app;
}

public partial class Program;
