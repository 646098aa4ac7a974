using System.Text;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets;

public sealed class SheetReaderTests
{
    private static Sheet Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static Sheet Read(byte[] bytes)
    {
        var reading = SheetReader.Read(bytes);
        Assert.True(reading.IsReadable, reading.Problem?.Sentence.ToString());
        return reading.Sheet;
    }

    private static SheetProblem Refused(byte[] bytes, SheetLimits? limits = null)
    {
        var reading = SheetReader.Read(bytes, limits);
        Assert.False(reading.IsReadable);
        return reading.Problem;
    }

    private static SheetProblem Refused(string text) => Refused(Encoding.UTF8.GetBytes(text));

    // RFC 4180 section 2, items 1 to 7, each with its own example; a heading line is put before those that have none.
    [Theory]
    [InlineData("a,b,c\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("a,b,c\r\naaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("field1,field2,field3\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("a,b,c\r\n aaa,bbb ,ccc\r\n", " aaa|bbb |ccc")]
    [InlineData("a,b,c\r\n\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("a,b,c\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc", "zzz|yyy|xxx")]
    [InlineData("a,b,c\r\n\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc")]
    public void The_examples_of_RFC_4180_read_as_it_says(string text, params string[] rows) =>
        Assert.Equal(rows, Read(text).Rows.Select(row => string.Join('|', row.Cells)));

    [Theory]
    [InlineData("code;price\nC-1;1,50\nC-2;12,00\n", ';')]
    [InlineData("code,price\nC-1,\"1;50\"\nC-2,12\n", ',')]
    [InlineData("code\tname, called\nC-1\tAda, Countess\n", '\t')]
    [InlineData("sep=;\r\ncode;name\r\nC-1;Ada\r\n", ';')]
    [InlineData("\"a;b;c\",d\n1,2\n", ',')]
    public void The_separator_is_the_one_under_which_the_columns_hold_steady(string text, char separator)
    {
        var sheet = Read(text);
        Assert.Equal(separator, sheet.Separator);
        Assert.Equal(2, sheet.Headers.Count);
        Assert.Empty(sheet.RowProblems);
    }

    [Theory]
    [InlineData("utf-8", false, SheetEncoding.Utf8)]
    [InlineData("utf-8", true, SheetEncoding.Utf8WithMark)]
    [InlineData("utf-16", true, SheetEncoding.Utf16LittleEndian)]
    [InlineData("utf-16BE", true, SheetEncoding.Utf16BigEndian)]
    public void Unicode_files_read_with_their_marks(string name, bool mark, SheetEncoding expected)
    {
        var encoding = Encoding.GetEncoding(name);
        byte[] bytes = [.. mark ? encoding.GetPreamble() : [], .. encoding.GetBytes("code,name\nC-1,Zoë Łukasz 愛\n")];
        var sheet = Read(bytes);
        Assert.Equal(expected, sheet.Encoding);
        Assert.Equal("code", sheet.Headers[0]);
        Assert.Equal("Zoë Łukasz 愛", sheet.Rows[0].Cells[1]);
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_taken_for_Windows_1252()
    {
        // E9 is e acute, 80 the euro sign, 92 the right single quote in that code page.
        byte[] bytes = [.. "code;name\nC-1;Ren"u8, 0xE9, 0x92, (byte)'s', (byte)' ', 0x80, (byte)'\n'];
        var sheet = Read(bytes);
        Assert.Equal(SheetEncoding.Windows1252, sheet.Encoding);
        Assert.Equal("René’s €", sheet.Rows[0].Cells[1]);
    }

    [Fact]
    public void Rows_are_numbered_as_a_spreadsheet_does_when_cells_hold_line_breaks_and_rows_are_blank()
    {
        var sheet = Read("\ncode,note\r\nC-1,\"one\r\ntwo\nthree\"\r\n\r\n,\r\nC-2,x\r\nC-3\r\n\r\n\r\n");
        Assert.Equal([3, 6], sheet.Rows.Select(row => row.Row));
        Assert.Equal(7, Assert.Single(sheet.RowProblems).Row);
    }

    [Fact]
    public void A_line_that_announces_the_separator_is_no_row()
    {
        Assert.Equal(2, Read("sep=;\r\ncode;name\r\nC-1;Ada\r\n").Rows[0].Row);
    }

    [Fact]
    public void Rows_too_short_or_too_long_are_reported_and_the_others_kept()
    {
        var sheet = Read("code,name\nC-1\nC-2,Ada,Countess\nC-3,Bea,\nC-4,Cyd\n");
        Assert.Equal(["C-3", "C-4"], sheet.Rows.Select(row => row.Cells[0]));
        Assert.Equal(
            [
                (2, "This row has 1 cells where 2 were expected."),
                (3, "This row has 3 cells where 2 were expected. Put a cell that contains the separator in quotes."),
            ],
            sheet.RowProblems.Select(problem => (problem.Row!.Value, problem.Sentence.ToString()))
        );
    }

    [Fact]
    public void A_quote_inside_an_unquoted_cell_is_text_and_text_after_a_closing_quote_is_reported()
    {
        var sheet = Read("code,size\nU-1,6\" lace\nU-2,\"7\" lace\"\n5\"U,\"7\"x\nU-4,8\n");
        Assert.Equal(["6\" lace", "8"], sheet.Rows.Select(row => row.Cells[1]));
        Assert.Equal([3, 4], sheet.RowProblems.Select(problem => problem.Row));
    }

    [Theory]
    [InlineData("code,note\nC-1,ok\nC-2,\"never closed\nC-3,x\n", 3)]
    [InlineData("code,note\n\"C\n1\",\"a \"\"b\"\"\n\nC-3,x", 3)]
    [InlineData("code,note\r\nC\"1,\"x\r\ny\r\n", 2)]
    [InlineData("code,note\n\"", 2)]
    [InlineData("\"code,note\nC-1,x\n", 1)]
    public void A_quote_never_closed_is_refused_with_the_line_where_it_opened(string text, int line) =>
        Assert.Equal(line, Refused(text).Row);

    [Fact]
    public void Headings_are_trimmed_and_unnamed_ones_at_the_end_dropped()
    {
        var sheet = Read(" code , ,name ,,\nC-1,x,Ada,,\n");
        Assert.Equal(["code", "(2)", "name"], sheet.Headers);
        Assert.Equal(["C-1", "x", "Ada"], sheet.Rows[0].Cells);
    }

    [Fact]
    public void The_same_heading_twice_is_refused() =>
        Assert.Equal(
            "Columns 1 and 3 are both called \"CODE\". Give each column a name of its own.",
            Refused("code,name,CODE\n1,2,3\n").Sentence.ToString()
        );

    [Theory]
    [InlineData("")]
    [InlineData("\n\r\n , ,\n")]
    public void An_empty_file_is_refused(string text) => Assert.StartsWith("This file is empty", Refused(text).Sentence.Template);

    [Fact]
    public void Headings_without_rows_are_refused() => Assert.Contains("no rows", Refused("code,name\n,\n").Sentence.Template);

    [Fact]
    public void A_workbook_a_PDF_and_a_picture_are_refused_by_name()
    {
        Assert.StartsWith("This is a workbook", Refused([0x50, 0x4B, 3, 4, 20, 0]).Sentence.Template);
        Assert.StartsWith("This is a workbook", Refused([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, 0]).Sentence.Template);
        Assert.StartsWith("This is a PDF", Refused("%PDF-1.7\n"u8.ToArray()).Sentence.Template);
        Assert.StartsWith("This file is not text", Refused([0x89, 0x50, 0x4E, 0x47, 0, 0, 0, 13]).Sentence.Template);
        Assert.StartsWith("This file is not text", Refused([0xFF, 0xFE, 0x00, 0xD8]).Sentence.Template);
    }

    [Fact]
    public void Files_beyond_the_limits_are_refused()
    {
        var bytes = "a,b\n1,2\n3,4\n5,6\n"u8.ToArray();
        Assert.Contains("bytes", Refused(bytes, new SheetLimits(Bytes: 10)).Sentence.Template);
        Assert.Equal(4, Refused(bytes, new SheetLimits(Rows: 2)).Row);
        Assert.Contains("columns", Refused(bytes, new SheetLimits(Columns: 1)).Sentence.Template);
        Assert.True(SheetReader.Read(bytes, new SheetLimits(bytes.Length, Rows: 3, Columns: 2)).IsReadable);
    }
}
