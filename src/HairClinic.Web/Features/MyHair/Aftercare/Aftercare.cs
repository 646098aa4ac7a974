using HairClinic.Web.Data;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What to do and to leave between visits: the practice's own words, else the usual ones.</summary>
public sealed class Aftercare(ClinicDbFactory databases)
{
    /// <param name="language">Two letters.</param>
    public async Task<IReadOnlyDictionary<CareTopic, string>> OpenAsync(string language, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .OwnTexts.AsNoTracking()
            .Where(t => t.Language == language && t.Text != "")
            .ToDictionaryAsync(t => t.Topic, t => t.Text, cancellation);
    }
}
