using System.CommandLine;
using HairClinic.Web.Data;

namespace HairClinic.Web.CommandLine;

/// <summary>Which practice a command works for: the one named, else the only one there is.</summary>
public static class PracticeOption
{
    public static Option<Guid?> Make() => new("--practice") { Description = "Id of the practice, where the database holds several." };

    /// <summary>Null, and said on the error stream, when it is not clear which.</summary>
    public static async Task<Guid?> ChooseAsync(IServiceProvider services, Guid? named)
    {
        var all = await services.GetRequiredService<PracticeJobRunner>().PracticeIdsAsync(CancellationToken.None);
        if (named is { } id && all.Contains(id))
            return id;
        if (named is null && all.Count == 1)
            return all[0];
        await Console.Error.WriteLineAsync(
            all.Count == 0 ? "There is no practice in this database yet. Start the site and open its guide first."
            : named is not null ? $"There is no practice {named} in this database."
            : $"There are {all.Count} practices in this database. Name one with --practice: {string.Join(", ", all)}."
        );
        return null;
    }
}
