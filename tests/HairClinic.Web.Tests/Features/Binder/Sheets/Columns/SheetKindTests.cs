using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Columns;

public sealed class SheetKindTests
{
    public static TheoryData<string> Kinds => [.. SheetKind.All.Select(kind => kind.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_heading_could_mean_two_columns_of_the_same_sheet(string name)
    {
        var words = SheetKind
            .Find(name)!
            .Columns.SelectMany(column => column.Synonyms.Append(column.Name).Select(WordNormalizer.Normalize).Distinct());
        Assert.Empty(words.GroupBy(word => word).Where(group => group.Count() > 1).Select(group => group.Key));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_word_could_mean_two_choices_of_the_same_column(string name)
    {
        var columns = SheetKind.Find(name)!.Columns.Where(column => column.Type == ColumnType.Choice).ToArray();
        Assert.All(columns, column => Assert.NotEmpty(column.Choices));
        var repeated =
            from column in columns
            from word in column.Choices.SelectMany(choice =>
                choice.Synonyms.Append(choice.Name).Select(WordNormalizer.Normalize).Distinct()
            )
            group word by (column.Name, word) into same
            where same.Count() > 1
            select same.Key;
        Assert.Empty(repeated);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_example_reads_as_its_column_says(string name)
    {
        var kind = SheetKind.Find(name)!;
        var cells = new CellReader(ColumnMapping.Propose(kind, kind.Headers), SheetConventions.ForExport("GB", "GBP"));
        cells.CheckCells(new SheetRow(2, [.. kind.Columns.Select(column => column.Example)]));
        Assert.Empty(cells.Problems);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Our_own_headings_map_to_themselves(string name)
    {
        var kind = SheetKind.Find(name)!;
        var mapping = ColumnMapping.Propose(kind, kind.Headers);
        Assert.Equal(kind.Headers, kind.Columns.Select(mapping.HeaderOf));
        Assert.True(mapping.IsComplete);
        Assert.Empty(mapping.UnusedHeaders);
    }
}
