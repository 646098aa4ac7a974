using System.Text;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Shell;

public sealed class SheetAnswerTests
{
    [Fact]
    public async Task No_cell_of_a_sheet_is_run_as_a_formula_and_it_is_kept_nowhere()
    {
        var context = new DefaultHttpContext { RequestServices = new ServiceCollection().AddLogging().BuildServiceProvider() };
        using var body = new MemoryStream();
        context.Response.Body = body;

        await FileResults
            .Sheet(
                context,
                "table.csv",
                ["name", "value"],
                [
                    ["=HYPERLINK(1)", "0.5"],
                    ["plain, told", "2"],
                ]
            )
            .ExecuteAsync(context);

        Assert.Equal("\uFEFFname,value\r\n'=HYPERLINK(1),0.5\r\n\"plain, told\",2\r\n", Encoding.UTF8.GetString(body.ToArray()));
        Assert.Equal("no-store", context.Response.Headers.CacheControl);
    }
}
