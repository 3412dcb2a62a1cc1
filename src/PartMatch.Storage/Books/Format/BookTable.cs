namespace PartMatch.Storage.Books.Format;

/// <summary>What the code in a cell names.</summary>
internal enum Refers
{
    Nothing,
    Maker,
    Kind,
    Work,
    Evidence,
    Part,
    Variant,
    Position,
    Item,
    Seller,
    Listing,
}

/// <summary>A column of a file.</summary>
/// <param name="Required">May it not be empty?</param>
internal sealed record BookColumn(string Name, CellRule Rule, bool Required, Refers Refers)
{
    /// <summary>May a file lack it? Books from before there was such a column do: its cells are then empty.</summary>
    public bool CameLater { get; init; }
}

/// <summary>A file of a parts book, and the table of the same name and columns that holds its rows.</summary>
internal sealed class BookTable
{
    private readonly Dictionary<string, int> _indexes;

    public BookTable(string file, string name, string key, bool familyOnly, IReadOnlyList<BookColumn> columns)
    {
        (File, Stem, Name, Key, FamilyOnly, Columns) = (file, file[..^4], name, key.Split(','), familyOnly, columns);
        _indexes = columns.Index().ToDictionary(pair => pair.Item.Name, pair => pair.Index, StringComparer.Ordinal);
        KeyIndexes = [.. Key.Select(IndexOf)];
    }

    public string File { get; }

    /// <summary>The file's name without its ending: how routes and history name the table.</summary>
    public string Stem { get; }

    /// <summary>Of the SQL table.</summary>
    public string Name { get; }

    /// <summary>Columns that are together unique in a book, in the order by which its rows are sorted.</summary>
    public IReadOnlyList<string> Key { get; }

    public IReadOnlyList<int> KeyIndexes { get; }

    /// <summary>May only a family book have it?</summary>
    public bool FamilyOnly { get; }

    /// <summary>In the order of the file.</summary>
    public IReadOnlyList<BookColumn> Columns { get; }

    public int IndexOf(string column) => _indexes[column];

    public int? FindIndex(string column) => _indexes.TryGetValue(column, out var index) ? index : null;
}

/// <summary>One row of a file.</summary>
/// <param name="line">Physical line where it starts; 0 when it comes from the base.</param>
/// <param name="cells">In the order of the table's columns; empty text where nothing is recorded.</param>
internal sealed class BookRow(BookTable table, int line, string[] cells)
{
    public BookTable Table => table;

    public int Line => line;

    public IReadOnlyList<string> Cells => cells;

    /// <summary>Is it of the wrong width? Then its cells may stand in the wrong columns: it counts as declared, and nothing else of it is judged.</summary>
    public bool IsBroken { get; init; }

    /// <summary>Where it is one of packed rows: there it stands.</summary>
    public (PackedRows Rows, int Index)? Packed { get; init; }

    /// <summary>The same, as a row of its own.</summary>
    public BookRow Unpacked() => new(table, line, cells) { IsBroken = IsBroken };

    public string this[string column]
    {
        get => cells[table.IndexOf(column)];
        set => this[table.IndexOf(column)] = value;
    }

    public string this[int column]
    {
        get => cells[column];
        set
        {
            if (Packed is var (rows, index) && cells[column] != value)
            {
                rows.Write(index, column, value);
            }

            cells[column] = value;
        }
    }

    /// <summary>Is something recorded there?</summary>
    public bool Has(string column) => this[column].Length > 0;

    /// <summary>The items of a list cell; none when it is empty.</summary>
    public string[] List(string column) => Has(column) ? this[column].Split('|') : [];

    /// <summary>Where it stands, for messages about another row.</summary>
    public string Place => line > 0 ? $"in line {line}" : "in the base";

    /// <summary>Its key, for messages.</summary>
    public string KeyText => string.Join(',', table.KeyIndexes.Select(index => cells[index]));
}
