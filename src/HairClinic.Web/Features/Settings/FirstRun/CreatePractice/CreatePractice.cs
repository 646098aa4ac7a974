using System.Net.Mail;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Settings;

/// <summary>The first step: the practice itself and its owner, who is then signed in. Opened by the code on the console.</summary>
public sealed class CreatePractice(SetupCode code, PracticePresence presence, PracticeJobRunner jobs, SignInManager<AppUser> accounts)
{
    public async Task<SetupAccess> OpenAsync(string? offered, CancellationToken cancellation) =>
        await presence.AnyAsync(cancellation) ? SetupAccess.Closed
        : string.IsNullOrWhiteSpace(offered) ? SetupAccess.AsksForCode
        : code.Opens(offered) ? SetupAccess.Open
        : SetupAccess.WrongCode;

    /// <exception cref="Refusal">Another code, another practice came first, or the password is too short.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        if (!code.Opens(input.Code))
            throw new Refusal("This is not the code on the console.");
        await code.OneAtATime.WaitAsync(cancellation);
        try
        {
            var there = await jobs.PracticeIdsAsync(cancellation);
            if (there.Count > 0 && !there.Contains(input.Key))
                throw new Refusal("Someone set this place up a moment ago. Sign in instead.");
            var userId = await jobs.RunJobAsync(input.Key, nameof(CreatePractice), services => FoundAsync(services, input, cancellation));
            var owner = await accounts.UserManager.FindByIdAsync(userId.ToString());
            await accounts.SignInAsync(owner!, isPersistent: false);
        }
        finally
        {
            code.OneAtATime.Release();
        }
    }

    // The practice's id is the key made when the form opened, so that a second tap meets the first one's answer.
    private static Task<Guid> FoundAsync(IServiceProvider services, Input input, CancellationToken cancellation) =>
        services
            .GetRequiredService<WriteOnce>()
            .RunAsync(
                input.Key,
                nameof(CreatePractice),
                // A hash of what was sent is kept: neither password nor code may be in it.
                input with
                {
                    Password = "",
                    Code = "",
                },
                async db =>
                {
                    var settings = new PracticeSettings(Guid.CreateVersion7(), input.PracticeName, input.Region, input.Culture);
                    var owner = new Person(Guid.CreateVersion7(), input.OwnerName, StaffRole.Owner);
                    var book = services.GetRequiredService<AccountFactory>();
                    var user = await book.BuildAsync(input.Key, owner.Id, input.SignInName, EmailIn(input.SignInName), input.Password);
                    db.Practices.Add(new PracticeRow(input.Key));
                    db.PracticeSettings.Add(settings);
                    db.People.Add(owner);
                    db.Users.Add(user);
                    return user.Id;
                },
                cancellation
            );

    // Where the name to sign in with is an address, letters about the account go there.
    private static string? EmailIn(string name) =>
        name.Contains('@', StringComparison.Ordinal) && MailAddress.TryCreate(name.Trim(), out var address) ? address.Address : null;

    public enum SetupAccess
    {
        Open,
        AsksForCode,
        WrongCode,

        /// <summary>Somebody practises here already.</summary>
        Closed,
    }

    public sealed record Input
    {
        public Guid Key { get; set; }
        public string Code { get; set; } = "";
        public string PracticeName { get; set; } = "";

        /// <summary>ISO 3166 country.</summary>
        public string Region { get; set; } = "GB";

        public string Culture { get; set; } = "en-GB";
        public string OwnerName { get; set; } = "";
        public string SignInName { get; set; } = "";
        public string Password { get; set; } = "";
    }
}
