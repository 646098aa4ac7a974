using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Columns;

public sealed class ColumnMappingTests
{
    [Fact]
    public void Headings_are_recognised_by_synonym_whatever_their_case_accents_and_brackets()
    {
        var mapping = ColumnMapping.Propose(
            SheetKind.Clients,
            ["Client No.", "FULL NAME", "Salón", "Telefono (móvil)", "Correo electrónico", "D.O.B.", "Shoe size"]
        );
        Assert.Equal("Client No.", mapping.HeaderOf(ClientColumns.Code));
        Assert.Equal("FULL NAME", mapping.HeaderOf(ClientColumns.Name));
        Assert.Equal("Salón", mapping.HeaderOf(ClientColumns.HomeSalon));
        Assert.Equal("Telefono (móvil)", mapping.HeaderOf(ClientColumns.Phone));
        Assert.Equal("Correo electrónico", mapping.HeaderOf(ClientColumns.Email));
        Assert.Equal(["D.O.B.", "Shoe size"], mapping.UnusedHeaders);
        Assert.True(mapping.IsComplete);
    }

    [Fact]
    public void Our_own_name_wins_over_a_synonym_of_another_column()
    {
        // "code" alone would be the serial; beside "serial" it stays unused.
        Assert.Equal("Code", ColumnMapping.Propose(SheetKind.Units, ["Code", "Client"]).HeaderOf(UnitColumns.Serial));
        var both = ColumnMapping.Propose(SheetKind.Units, ["Code", "Client", "Serial"]);
        Assert.Equal("Serial", both.HeaderOf(UnitColumns.Serial));
        Assert.Equal(["Code"], both.UnusedHeaders);
    }

    [Fact]
    public void Required_columns_without_a_source_are_named()
    {
        var mapping = ColumnMapping.Propose(SheetKind.Bonds, ["serial", "glue"]);
        Assert.Equal([BondColumns.ClientCode, BondColumns.AppliedOn], mapping.MissingRequired);
        Assert.Equal([BondColumns.AppliedOn], mapping.MissingKey);
        Assert.False(mapping.IsComplete);
    }

    [Fact]
    public void A_heading_given_to_one_column_is_taken_from_the_other()
    {
        var proposed = ColumnMapping.Propose(SheetKind.Clients, ["code", "name", "salon", "card"]);
        var changed = proposed.With(ClientColumns.Code, "card").With(ClientColumns.Called, "name");
        Assert.Equal("card", changed.HeaderOf(ClientColumns.Code));
        Assert.Equal("name", changed.HeaderOf(ClientColumns.Called));
        Assert.Equal([ClientColumns.Name], changed.MissingRequired);
        Assert.Equal(["code"], changed.UnusedHeaders);
        Assert.Equal("code", proposed.HeaderOf(ClientColumns.Code));
        Assert.Null(changed.With(ClientColumns.Code, null).HeaderOf(ClientColumns.Code));
    }

    [Fact]
    public void Neither_a_strange_heading_nor_a_column_of_another_sheet_can_be_mapped()
    {
        var mapping = ColumnMapping.Propose(SheetKind.Clients, ["code"]);
        Assert.Throws<ArgumentException>(() => mapping.With(ClientColumns.Name, "nobody"));
        Assert.Throws<ArgumentException>(() => mapping.With(VisitColumns.Chair, "code"));
        Assert.Throws<ArgumentException>(() => mapping.WithKeyColumns(VisitColumns.Chair));
        Assert.Throws<ArgumentException>(() => mapping.WithKeyColumns());
    }

    [Fact]
    public void Rows_are_recognised_by_the_columns_the_practice_chooses()
    {
        var mapping = ColumnMapping
            .Propose(SheetKind.Clients, ["code", "name", "phone"])
            .WithKeyColumns(ClientColumns.Name, ClientColumns.Phone);
        Assert.Equal("Ada\u001F1", mapping.RowKeyOf(new SheetRow(2, ["C-1", " Ada ", "1"])));
        Assert.Null(mapping.RowKeyOf(new SheetRow(2, ["C-1", "Ada", " "])));
        Assert.Equal([ClientColumns.Phone], mapping.With(ClientColumns.Phone, null).MissingKey);
    }

    [Fact]
    public void A_key_that_stands_twice_is_reported_with_the_earlier_line()
    {
        var mapping = ColumnMapping.Propose(SheetKind.Units, ["Unit no", "client"]);
        var rows = new[] { "U-1", "U-2", " U-1 ", "" }.Select((serial, index) => new SheetRow(index + 2, [serial, "C-1"]));
        var problem = Assert.Single(mapping.FindDuplicateRows(new Sheet(mapping.Headers, [.. rows], [], ',', SheetEncoding.Utf8)));
        Assert.Equal((4, "Unit no", "U-1"), (problem.Row, problem.Column, problem.Value));
        Assert.Equal("a row of its own: the same one stands in row 2", problem.Expected.ToString());
    }
}
