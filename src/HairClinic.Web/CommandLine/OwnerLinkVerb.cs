using System.CommandLine;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.Accounts;

namespace HairClinic.Web.CommandLine;

/// <summary>owner-link: a way back in for an owner who lost the password, or the codes app too.</summary>
public static class OwnerLinkVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var name = new Option<string?>("--name") { Description = "What the owner signs in with, where there are several owners." };
        var drop = new Option<bool>("--drop-second-factor")
        {
            Description = "The codes app is lost as well: take it off, with its recovery codes and the passkeys.",
        };
        var site = new Option<string?>("--site")
        {
            Description = "The site's own address, such as https://book.example, for a whole link.",
        };
        site.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } address && !IsSite(address))
                result.AddError("--site is the address people open the site at, such as https://book.example.");
        });
        var practice = PracticeOption.Make();
        var command = new Command("owner-link", "Make a link with which an owner who cannot sign in sets a new password.")
        {
            name,
            drop,
            site,
            practice,
        };
        command.SetAction(async result =>
        {
            await using var app = await open(result, []);
            if (await PracticeOption.ChooseAsync(app.Services, result.GetValue(practice)) is not { } id)
                return 2;
            return await RunAsync(
                app.Services,
                id,
                result.GetValue(name),
                result.GetValue(drop),
                result.GetValue(site) ?? app.Services.GetRequiredService<SiteAddress>().Set?.GetLeftPart(UriPartial.Authority),
                Console.Out,
                Console.Error
            );
        });
        return command;
    }

    /// <param name="site">The site's own address; null: only path and query are printed.</param>
    /// <returns>0 when the link was made, 2 when it is not clear for whom.</returns>
    public static async Task<int> RunAsync(
        IServiceProvider services,
        Guid practice,
        string? name,
        bool dropFactors,
        string? site,
        TextWriter say,
        TextWriter complain
    )
    {
        OwnerLink.Outcome made;
        try
        {
            made = await services
                .GetRequiredService<PracticeJobRunner>()
                .RunJobAsync(
                    practice,
                    OwnerLink.Job,
                    job => job.GetRequiredService<OwnerLink>().SaveAsync(name, dropFactors, CancellationToken.None)
                );
        }
        catch (Refusal refusal)
        {
            await complain.WriteLineAsync(refusal.Message);
            return 2;
        }
        await say.WriteLineAsync($"A new password for {made.PersonName}, who signs in as {made.Name}:");
        await say.WriteLineAsync();
        await say.WriteLineAsync($"  {site?.TrimEnd('/')}{made.Path}");
        await say.WriteLineAsync();
        if (site is null)
            await say.WriteLineAsync("Put the site's own address in front of it, such as https://book.example.");
        await say.WriteLineAsync("It opens once, within one hour. Whoever has it can become the owner: show it to nobody.");
        await say.WriteLineAsync(
            made.AsksForCode ? "The codes app stays and is asked for after the new password. If it is lost too: --drop-second-factor."
            : dropFactors ? "Codes app, recovery codes and passkeys were taken off: set them up anew after signing in."
            : "No codes app is asked for at this sign-in."
        );
        await say.WriteLineAsync("Their other sign-ins were ended, and the access log says that this was done at the command line.");
        await say.WriteLineAsync(
            made.Email is { } address
                ? $"{address} is told by mail as soon as the site runs."
                : "The account has no e-mail address, so nobody is told by mail."
        );
        return 0;
    }

    private static bool IsSite(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.Query.Length == 0;
}
