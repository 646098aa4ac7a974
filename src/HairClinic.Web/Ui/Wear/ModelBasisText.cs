namespace HairClinic.Web.Ui.Wear;

/// <summary>What predictions stand on while the newest recalculation found no answer, and why it found none, in plain words.</summary>
public static class ModelBasisText
{
    public static string Of(ModelBasis basis, IStringLocalizer words)
    {
        string stands = basis switch
        {
            { Quantity: LifetimeKind.Life, RecordsUpTo: { } day } => words[
                "What is predicted here stands on the records up to {0}: the newest recalculation of how long units last found no answer.",
                Dates.Day(day)
            ],
            { Quantity: LifetimeKind.Life } => words[
                "What is predicted here stands on the practice’s rows alone: the newest recalculation of how long units last found no answer."
            ],
            { RecordsUpTo: { } day } => words[
                "What is predicted here stands on the records up to {0}: the newest recalculation of how long bonds hold found no answer.",
                Dates.Day(day)
            ],
            _ => words[
                "What is predicted here stands on the practice’s rows alone: the newest recalculation of how long bonds hold found no answer."
            ],
        };
        // What a covariate is called is What lasts' to say.
        return basis.Reason.Argument is null ? $"{stands} {words[basis.Reason.Sentence]}" : stands;
    }
}
