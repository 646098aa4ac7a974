using System.Net;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Tests.Security;

namespace HairClinic.Web.Tests.Features.Lasting.WhatLasts;

public sealed class WhatLastsEndpointTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_table_is_a_sheet_with_one_row_of_headings_and_a_word_that_means_nothing_is_not_found()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var owner = (await Somebody.AllAsync(site)).First(s => s.Role == Domain.Practices.StaffRole.Owner);

        using var groups = await owner.Browser.GetAsync("/what-lasts/table.csv?of=hold&by=lot", Cancel);
        using var costs = await owner.Browser.GetAsync("/what-lasts/table.csv?of=cost", Cancel);

        Assert.Equal("text/csv", groups.Content.Headers.ContentType!.MediaType);
        Assert.Equal("hold-by-lot-groups.csv", groups.Content.Headers.ContentDisposition!.FileName);
        Assert.StartsWith(
            "group,spells,ended,censored,half_by_day,low,high,estimate,certain\r\n",
            (await groups.Content.ReadAsStringAsync(Cancel)).TrimStart('\uFEFF'),
            StringComparison.Ordinal
        );
        Assert.StartsWith("name,currency,", (await costs.Content.ReadAsStringAsync(Cancel)).TrimStart('\uFEFF'), StringComparison.Ordinal);
        foreach (var wrong in new[] { "of=weather", "of=life&by=lot", "of=life&table=costs", "of=cost&table=groups" })
        {
            using var answer = await owner.Browser.GetAsync($"/what-lasts/table.csv?{wrong}", Cancel);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
        using var page = await owner.Browser.GetAsync("/what-lasts?of=weather", Cancel);
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
    }

    [Theory]
    [InlineData(null, null, LastingSubject.Life, LastingSide.Workshop)]
    [InlineData("hold", null, LastingSubject.Hold, LastingSide.Adhesive)]
    [InlineData("cost", "base", LastingSubject.Cost, LastingSide.Base)]
    public void A_question_not_said_in_full_is_the_first_there_is(string? of, string? by, LastingSubject subject, LastingSide side) =>
        Assert.Equal(new LastingQuery(subject, side), LastingQuery.Parse(of, by));
}
