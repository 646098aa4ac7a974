using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Privacy;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Privacy;

public sealed class ClientTablesTests
{
    /// <summary>Tables that point at somebody by a bare id, without a client's name on the column.</summary>
    private static readonly string[] ByBareId = ["find_words", "drafts"];

    /// <summary>Where such an id, or what one can be told by, stands inside a text.</summary>
    private static readonly string[] Inside = ["write_keys", "work_items"];

    private static readonly ClinicDb Db = new(ClinicDbOptions.For("Host=layout"));

    [Fact]
    public void A_table_that_points_at_a_client_or_their_rows_is_taken_out_or_left_out_for_a_reason()
    {
        var found = ClientTables.FindAll(Db.Model).Select(t => t.Name).ToHashSet();
        var taken = ClientTakeOut.Tables(Db).Select(t => t.Name).ToHashSet();
        var offenders =
            from type in Db.Model.GetEntityTypes()
            let table = type.GetTableName()
            let points = type.GetForeignKeys().Any(k => found.Contains(k.PrincipalEntityType.GetTableName()!))
                || type.GetProperties().Any(p => p.Name.EndsWith("ClientId", StringComparison.Ordinal) || p.Name == "SubjectId")
            where points && !taken.Contains(table) && !ClientTakeOut.LeftOut.ContainsKey(table!) && !ByBareId.Contains(table)
            select table;

        Assert.Empty(offenders);
        Assert.All(ClientTakeOut.LeftOut.Values, why => Assert.True(why.Length > 20));
    }

    [Fact]
    public void Rows_of_rows_are_found_through_what_they_cannot_do_without()
    {
        var records = ClientTables.FindAll(Db.Model).Single(t => t.Name == "visit_records");

        Assert.Contains("from visits", records.Where, StringComparison.Ordinal);
        Assert.DoesNotContain("hair_systems", records.Where, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_text_of_a_table_that_stays_is_emptied_or_said_to_tell_of_nobody()
    {
        var offenders =
            from table in ClientTables.FindAll(Db.Model)
            let kept = ErasureExemptions.Find(table.Name)
            where kept is not null
            from column in table.Columns.Where(c => c.Wordy)
            where !kept.Emptied.Contains(column.Name) && !kept.Harmless.Contains(column.Name)
            select $"{table.Name}.{column.Name}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void Everything_that_points_at_a_client_is_erased_or_stays_for_a_reason()
    {
        var steps = ErasureStep.Plan(Db.Model).Select(s => s.Table).ToHashSet();
        var offenders = ClientTables
            .FindAll(Db.Model)
            .Select(t => t.Name)
            .Concat(ByBareId)
            .Concat(Inside)
            .Where(t => !steps.Contains(t) && ErasureExemptions.Find(t) is null);

        Assert.Empty(offenders);
    }
}
