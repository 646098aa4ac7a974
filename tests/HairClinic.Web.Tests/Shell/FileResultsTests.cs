using System.Text;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace HairClinic.Web.Tests.Shell;

public sealed class FileResultsTests
{
    [Fact]
    public void A_sheet_holds_no_formula_and_is_kept_by_no_browser()
    {
        var context = new DefaultHttpContext();

        var file = Assert.IsType<FileContentHttpResult>(
            FileResults.Sheet(
                context,
                "list.csv",
                ["salon", "note"],
                [
                    ["=HYPERLINK(\"x\")", "a, \"b\""],
                    ["Elm; +1", ""],
                ]
            )
        );

        Assert.Equal(
            "\uFEFFsalon,note\r\n\"'=HYPERLINK(\"\"x\"\")\",\"a, \"\"b\"\"\"\r\nElm;' +1,\r\n",
            Encoding.UTF8.GetString(file.FileContents.Span)
        );
        Assert.Equal(("list.csv", "no-store"), (file.FileDownloadName, $"{context.Response.Headers.CacheControl}"));
    }
}
