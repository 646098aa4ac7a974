using CsvHelper;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A CSV file read whole: lines that start with # are comments, the first other line is the header.</summary>
public sealed class CsvTable
{
    private readonly string[] _header;
    private readonly List<string[]> _rows = [];
    private readonly List<int> _lines = [];

    private CsvTable(string[] header) => _header = header;

    public int Count => _rows.Count;

    /// <exception cref="Refusal">There is no such file, no header, or a line has not as many cells as the header.</exception>
    public static CsvTable Read(string path)
    {
        if (!File.Exists(path))
            throw new Refusal("There is no file \"{0}\".", path);
        try
        {
            using var stream = File.OpenRead(path);
            return Read(stream);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Refusal("The file \"{0}\" cannot be read.", path);
        }
    }

    public static CsvTable Read(Stream stream)
    {
        var options = new CsvReaderOptions
        {
            Separator = ',',
            HasHeader = false,
            CommentPrefix = '#',
            TrimWhitespace = true,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Throw,
        };
        using var reader = CsvReader.Create(stream, options, leaveOpen: true);
        try
        {
            if (Next(reader) is not { } header)
                throw new Refusal("The file has no header line.");
            var table = new CsvTable(header);
            while (Next(reader) is { } cells)
            {
                if (cells.Length != header.Length)
                    throw new Refusal("Line {0} has {1} cells; the header has {2}.", reader.LineNumber, cells.Length, header.Length);
                table._rows.Add(cells);
                table._lines.Add((int)reader.LineNumber);
            }
            return table.Count > 0 ? table : throw new Refusal("The file has a header and no rows.");
        }
        catch (CsvFormatException)
        {
            throw new Refusal("Near line {0} a quote is not closed, or text follows one.", reader.LineNumber);
        }
    }

    private static string[]? Next(CsvReader reader)
    {
        while (reader.Read())
        {
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++)
                cells[i] = reader.GetString(i);
            if (!Array.TrueForAll(cells, string.IsNullOrWhiteSpace) || cells.Length > 1)
                return cells;
        }
        return null;
    }

    /// <exception cref="Refusal">There is no such column, or two.</exception>
    public CsvColumn Column(string name)
    {
        var found = Enumerable.Range(0, _header.Length).Where(i => _header[i] == name).ToList();
        return found.Count switch
        {
            1 => new CsvColumn(name, [.. _rows.Select(row => row[found[0]])], _lines),
            0 => throw new Refusal("There is no column \"{0}\"; the header has {1}.", name, string.Join(", ", _header)),
            _ => throw new Refusal("The column \"{0}\" is there more than once.", name),
        };
    }
}
