namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Which heading of a file feeds which of our columns. Immutable: each change gives a new mapping.</summary>
public sealed class ColumnMapping
{
    private readonly Dictionary<SheetColumn, int> _sources;

    private ColumnMapping(
        SheetKind kind,
        IReadOnlyList<string> headers,
        Dictionary<SheetColumn, int> sources,
        IReadOnlyList<SheetColumn> key
    )
    {
        (Kind, Headers, _sources, Key) = (kind, headers, sources, key);
    }

    public SheetKind Kind { get; }
    public IReadOnlyList<string> Headers { get; }

    /// <summary>The columns by which a row is recognised when the file is brought again.</summary>
    public IReadOnlyList<SheetColumn> Key { get; }

    public IReadOnlyList<SheetColumn> MissingRequired =>
        [.. Kind.Columns.Where(column => column.Required && !_sources.ContainsKey(column))];

    public IReadOnlyList<SheetColumn> MissingKey => [.. Key.Where(column => !_sources.ContainsKey(column))];

    /// <summary>Headings that would be left behind.</summary>
    public IReadOnlyList<string> UnusedHeaders => [.. Headers.Where((_, index) => !_sources.ContainsValue(index))];

    public bool IsComplete => MissingRequired.Count == 0 && MissingKey.Count == 0;

    /// <summary>Our own names win over synonyms, and no heading serves twice.</summary>
    public static ColumnMapping Propose(SheetKind kind, IReadOnlyList<string> headers)
    {
        var words = headers.Select(WordNormalizer.Normalize).ToArray();
        var sources = new Dictionary<SheetColumn, int>();
        void Claim(SheetColumn column, string name)
        {
            var at = Array.IndexOf(words, WordNormalizer.Normalize(name));
            if (at >= 0 && !sources.ContainsValue(at))
                sources.TryAdd(column, at);
        }
        foreach (var column in kind.Columns)
            Claim(column, column.Name);
        foreach (var column in kind.Columns)
        {
            foreach (var synonym in column.Synonyms)
                Claim(column, synonym);
        }
        return new ColumnMapping(kind, headers, sources, kind.Key);
    }

    /// <summary>A heading that fed another column is taken from it; null leaves the column without a source.</summary>
    /// <exception cref="ArgumentException">The column is not of this sheet, or the file has no such heading.</exception>
    public ColumnMapping With(SheetColumn column, string? header)
    {
        Require(column);
        var changed = new Dictionary<SheetColumn, int>(_sources);
        changed.Remove(column);
        if (header is not null)
        {
            var at = Headers.ToList().IndexOf(header);
            if (at < 0)
                throw new ArgumentException($"The file has no heading \"{header}\".", nameof(header));
            foreach (var (other, _) in changed.Where(source => source.Value == at).ToList())
                changed.Remove(other);
            changed.Add(column, at);
        }
        return new ColumnMapping(Kind, Headers, changed, Key);
    }

    /// <summary>Rows are recognised by these columns instead.</summary>
    public ColumnMapping WithKeyColumns(params IReadOnlyList<SheetColumn> key)
    {
        if (key.Count == 0)
            throw new ArgumentException("A key needs at least one column.", nameof(key));
        foreach (var column in key)
            Require(column);
        return new ColumnMapping(Kind, Headers, _sources, key);
    }

    public string? HeaderOf(SheetColumn column) => _sources.TryGetValue(column, out var at) ? Headers[at] : null;

    /// <summary>The cell without white space around it; null when the column has no source, empty when the cell is blank.</summary>
    public string? CellOf(SheetRow row, SheetColumn column) => _sources.TryGetValue(column, out var at) ? row.Cells[at].Trim() : null;

    /// <summary>The key cells as one text; null when any of them is blank or has no source.</summary>
    public string? RowKeyOf(SheetRow row)
    {
        var cells = Key.Select(column => CellOf(row, column)).ToArray();
        return Array.Exists(cells, string.IsNullOrEmpty) ? null : string.Join('\u001F', cells);
    }

    /// <summary>Rows whose key already stands on an earlier line.</summary>
    public IReadOnlyList<CellProblem> FindDuplicateRows(Sheet sheet)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var problems = new List<CellProblem>();
        foreach (var row in sheet.Rows)
        {
            if (RowKeyOf(row) is { } key && !seen.TryAdd(key, row.Row))
            {
                var shown = key.Replace("\u001F", ", ", StringComparison.Ordinal);
                var expected = new Sentence("a row of its own: the same one stands in row {0}", seen[key]);
                problems.Add(new CellProblem(row.Row, HeaderOf(Key[0])!, shown, expected));
            }
        }
        return problems;
    }

    private void Require(SheetColumn column)
    {
        if (!Kind.Columns.Contains(column))
            throw new ArgumentException($"The {Kind.Name} sheet has no column \"{column.Name}\".", nameof(column));
    }
}

/// <summary>Words as people mean them: no case, no accents, no punctuation, nothing in brackets. "Teléfono (móvil)" is "telefono".</summary>
public static class WordNormalizer
{
    public static string Normalize(string text)
    {
        var plain = new StringBuilder(text.Length);
        var brackets = 0;
        foreach (var rune in Decomposed(text).EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '(' or '[':
                    brackets++;
                    break;
                case ')' or ']':
                    brackets = Math.Max(0, brackets - 1);
                    break;
                default:
                    Append(plain, rune, brackets > 0);
                    break;
            }
        }
        return plain.ToString().TrimEnd();
    }

    private static void Append(StringBuilder plain, Rune rune, bool inBrackets)
    {
        if (inBrackets || Rune.GetUnicodeCategory(rune) == UnicodeCategory.NonSpacingMark || rune.Value == '\'')
            return;
        if (Rune.IsLetterOrDigit(rune))
            plain.Append(Rune.ToLowerInvariant(rune));
        else if (plain.Length > 0 && plain[^1] != ' ')
            plain.Append(' ');
    }

    // Normalize refuses half surrogates and U+FFFE, which a broken file may well contain.
    private static string Decomposed(string text)
    {
        var sound = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            sound.Append(rune.Value == 0xFFFE ? Rune.ReplacementChar : rune);
        return sound.ToString().Normalize(NormalizationForm.FormD);
    }
}
