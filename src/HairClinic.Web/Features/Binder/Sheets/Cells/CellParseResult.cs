namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A value read from a cell, or a sentence that says what was expected instead.</summary>
public readonly record struct CellParseResult<T>(T? Value, Sentence? Expected)
{
    public bool Succeeded => Expected is null;

    public static implicit operator CellParseResult<T>(T value) => new(value, null);

    public static implicit operator CellParseResult<T>(Sentence expected) => new(default, expected);
}

/// <summary>A sentence for people: the English template is also the localiser's key.</summary>
public sealed record Sentence(string Template, params object[] Arguments)
{
    public override string ToString() => string.Format(CultureInfo.InvariantCulture, Template, Arguments);
}
