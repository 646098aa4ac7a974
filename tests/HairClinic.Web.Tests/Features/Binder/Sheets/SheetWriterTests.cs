using System.Text;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets;

public sealed class SheetWriterTests
{
    // RFC 4180 section 2: item 1 (CRLF), items 5 to 7 (what is quoted, and how).
    [Fact]
    public void The_round_trip_export_is_comma_CRLF_and_quotes_only_where_needed()
    {
        var bytes = SheetWriter.WriteForRoundTrip(
            ["a", "b"],
            [
                ["plain", "b\"bb"],
                ["b\r\nbb", "x,y"],
                ["=1+1", ""],
            ]
        );
        Assert.Equal("a,b\r\nplain,\"b\"\"bb\"\r\n\"b\r\nbb\",\"x,y\"\r\n=1+1,\r\n", Encoding.UTF8.GetString(bytes));
    }

    [Fact]
    public void A_byte_order_mark_is_written_when_asked_for()
    {
        Assert.Equal(
            0xEF,
            SheetWriter.WriteForRoundTrip(
                ["a"],
                [
                    ["1"],
                ],
                byteOrderMark: true
            )[0]
        );
        Assert.Equal(
            (byte)'a',
            SheetWriter.WriteForRoundTrip(
                ["a"],
                [
                    ["1"],
                ]
            )[0]
        );
    }

    // The signs are those OWASP lists under "CSV Injection": = + - @ tab, carriage return, line feed and the full-width forms (from memory).
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+442079460018", "'+442079460018")]
    [InlineData("-5", "'-5")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("\rx", "'\rx")]
    [InlineData("\nx", "'\nx")]
    [InlineData("  =1", "'  =1")]
    [InlineData(" \"=1", "' \"=1")]
    [InlineData("＝1", "'＝1")]
    [InlineData("x;=1", "x;'=1")]
    [InlineData("x\n\"@y", "x\n'\"@y")]
    [InlineData("2025-03-01", "2025-03-01")]
    [InlineData("a = b", "a = b")]
    [InlineData("name@example.org", "name@example.org")]
    [InlineData("", "")]
    public void The_export_for_people_makes_text_of_what_would_start_a_formula(string cell, string expected)
    {
        var sheet = SheetReader
            .Read(
                SheetWriter.WriteForSpreadsheet(
                    ["k", "cell"],
                    [
                        ["k", cell],
                    ]
                )
            )
            .Sheet!;
        Assert.Equal(expected, sheet.Rows[0].Cells[1]);
    }

    [Fact]
    public void The_export_for_people_neutralises_headings_too_and_takes_the_separator_of_their_spreadsheet()
    {
        var bytes = SheetWriter.WriteForSpreadsheet(
            ["=a", "b"],
            [
                ["1", "2,5"],
            ],
            ';'
        );
        Assert.Equal("\uFEFF'=a;b\r\n1;\"2,5\"\r\n", Encoding.UTF8.GetString(bytes));
    }
}
