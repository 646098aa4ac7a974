using HairClinic.Domain.Practices;

namespace HairClinic.Web.Tests.Security;

public sealed class RefusalLogTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_tries_what_is_not_open_to_them_is_written_down_by_id()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, log.Catch);
        var trainee = site.Here.Staff[StaffRole.Trainee];
        var browser = await site.SignInAsync(ClinicSite.NameOf(trainee));

        await browser.GetAsync("/practice/people", Cancel);

        var line = Assert.Single(log.Lines, l => l.Contains("Refused:", StringComparison.Ordinal));
        Assert.Contains("/practice/people", line, StringComparison.Ordinal);
        Assert.Contains(trainee.Id.ToString(), line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task So_is_too_often_and_a_form_that_is_not_ours()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, log.Catch);

        for (var i = 0; i < 21; i++)
            await ClinicSite.TryAsync(site.Browser(), "somebody", "");
        using var unmarked = new FormUrlEncodedContent([KeyValuePair.Create("Input.Name", "x")]);
        await site.Browser().PostAsync("/sign-in", unmarked, Cancel);

        Assert.Contains(log.Lines, l => l.Contains("too often (SignIn) at /sign-in", StringComparison.Ordinal));
        Assert.Contains(log.Lines, l => l.Contains("a form without our mark at /sign-in", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Someone_who_only_has_to_sign_in_is_no_event()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, log.Catch);

        await site.Browser().GetAsync("/due", Cancel);

        Assert.DoesNotContain(log.Lines, l => l.Contains("Refused:", StringComparison.Ordinal));
    }
}
