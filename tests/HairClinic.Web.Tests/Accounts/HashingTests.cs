using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace HairClinic.Web.Tests.Accounts;

public sealed class HashingTests
{
    /// <summary>210,000 rounds of PBKDF2-HMAC-SHA512: OWASP, Password Storage Cheat Sheet, 2023 (from memory).</summary>
    [Fact]
    public async Task The_program_as_served_makes_a_password_slow_to_guess()
    {
        await using var app = Clinic.Build(["--applicationName", "HairClinic.Web", "--data", Path.GetTempPath()]);

        Assert.True(app.Services.GetRequiredService<IOptions<PasswordHasherOptions>>().Value.IterationCount >= 210_000);
    }
}
