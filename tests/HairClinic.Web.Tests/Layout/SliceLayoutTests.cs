using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Layout;

public sealed partial class SliceLayoutTests
{
    [Fact]
    public void Each_slice_has_a_folder_of_tests_of_the_same_name()
    {
        var offenders =
            from slice in SourceTree.Slices()
            let tests = Path.Combine(SourceTree.WebTests, "Features", slice.Area, slice.Slice)
            where !Directory.Exists(tests) || Directory.GetFiles(tests, "*.cs").Length == 0
            select $"{slice.Area}/{slice.Slice}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void No_page_or_component_mentions_the_database()
    {
        var offenders = SourceTree
            .Files(SourceTree.Web, ".razor")
            .Where(f => File.ReadAllText(f).Contains("ClinicDb", StringComparison.Ordinal));

        Assert.Empty(offenders.Select(SourceTree.Named));
    }

    [Fact]
    public void Areas_do_not_reach_into_each_others_slices()
    {
        var offenders =
            from file in SourceTree.Files(SourceTree.Features, ".cs", ".razor")
            let area = Path.GetRelativePath(SourceTree.Features, file).Split(Path.DirectorySeparatorChar)[0]
            from Match match in FeatureName().Matches(File.ReadAllText(file))
            where match.Groups[1].Value != area
            select $"{SourceTree.Named(file)} → {match.Value}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void Raw_sql_and_unfiltered_reads_stay_out_of_screens_and_work()
    {
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".cs", ".razor")
            let top = Path.GetRelativePath(SourceTree.Web, file).Split(Path.DirectorySeparatorChar)[0]
            where top is not ("Data" or "AccessLog" or "Accounts" or "Privacy" or "Learning")
            // The own page's fast path asks past EF.
            where SourceTree.Named(file) != "src/HairClinic.Web/Features/MyHair/MyHair/OwnPageReader.cs"
            where RawSql().IsMatch(File.ReadAllText(file))
            select SourceTree.Named(file);

        Assert.Empty(offenders);
    }

    [GeneratedRegex(@"HairClinic\.Web\.Features\.(\w+)(?:\.\w+)+|(?<=\busing HairClinic\.Web\.)Features\.(\w+)(?:\.\w+)+")]
    private static partial Regex FeatureName();

    [GeneratedRegex(@"IgnoreQueryFilters|\.FromSql|ExecuteSql|SqlQuery|NpgsqlCommand|CreateCommand")]
    private static partial Regex RawSql();
}
