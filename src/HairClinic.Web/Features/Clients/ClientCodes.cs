using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// Codes of clients as they are given. Whether one is free only the database knows, who looks past everybody's fence: nobody is told
/// whose a code is, and nothing looks before the save.
/// </summary>
public static class ClientCodes
{
    /// <summary>The same whoever has the code, whether one may see them or not.</summary>
    public const string NotToBeUsed = "This code cannot be used. Take the proposed one or another.";

    // That even one drawn code of 18 million is taken is rare.
    private const int MostDraws = 5;

    public static string ProposeCode() => ClientCodeGenerator.Draw(RandomNumberGenerator.GetInt32);

    /// <summary>Saves under the code; if it is the proposed one and somebody has it already, under one drawn anew.</summary>
    /// <param name="typed">What stands in the form.</param>
    /// <param name="proposed">What the form proposed.</param>
    /// <param name="field">The property the code was typed into.</param>
    /// <exception cref="Refusal">A code of one's own that is taken.</exception>
    public static async Task<T> SaveWithCodeAsync<T>(string typed, string? proposed, string field, Func<string, Task<T>> save)
    {
        var code = typed.Trim();
        for (var draws = 0; ; draws++)
        {
            try
            {
                return await save(code);
            }
            catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, ClientMap.CodeOnce))
            {
                if (draws == MostDraws || typed.Trim() != proposed)
                    throw new Refusal(NotToBeUsed) { Field = field };
                code = ProposeCode();
            }
        }
    }
}
