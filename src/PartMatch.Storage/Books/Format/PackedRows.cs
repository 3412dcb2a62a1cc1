using System.Collections;
using System.Text;

namespace PartMatch.Storage.Books.Format;

/// <summary>
/// Rows of one table as bytes, about as many as they have in their file: a million rows as objects take ten times that. A row is made anew each time it is asked for;
/// what is written into one of its cells is written here too.
/// </summary>
/// <remarks>Not for several threads at once.</remarks>
internal sealed class PackedRows : IReadOnlyList<BookRow>
{
    private const int ChunkBytes = 1 << 20;
    private const int MostBytesOfANumber = 5;

    private readonly BookTable _table;
    private readonly List<byte[]> _chunks;
    private readonly List<long> _starts; // the chunk, times 2^32, and the place in it
    private readonly Repeated[] _repeated;
    private int _used;

    public PackedRows(BookTable table)
        : this(table, [], [])
    {
    }

    private PackedRows(BookTable table, List<byte[]> chunks, List<long> starts) =>
        (_table, _chunks, _starts, _repeated) = (table, chunks, starts, [.. table.Columns.Select(_ => new Repeated())]);

    public int Count => _starts.Count;

    public BookRow this[int index]
    {
        get
        {
            var at = At(_starts[index]);
            var head = Number(ref at);
            var cells = new string[_table.Columns.Count];
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = _repeated[column].Text(Cell(ref at));
            }

            return new BookRow(_table, (int)(head >> 1), cells) { IsBroken = (head & 1) != 0, Packed = (this, index) };
        }
    }

    /// <param name="line">See <see cref="BookRow"/>, as with the others.</param>
    public void Add(int line, string[] cells, bool isBroken = false)
    {
        var most = MostBytesOfANumber + cells.Sum(cell => MostBytesOfANumber + Encoding.UTF8.GetMaxByteCount(cell.Length));
        if (_chunks.Count == 0 || _chunks[^1].Length - _used < most)
        {
            _chunks.Add(new byte[Math.Max(ChunkBytes, most)]);
            _used = 0;
        }

        _starts.Add(((long)(_chunks.Count - 1) << 32) | (uint)_used);
        Put(((uint)line << 1) | (isBroken ? 1u : 0u));
        foreach (var cell in cells)
        {
            Put((uint)Encoding.UTF8.GetByteCount(cell));
            _used += Encoding.UTF8.GetBytes(cell, _chunks[^1].AsSpan(_used));
        }
    }

    /// <summary>Writes a cell over, with a text of as many bytes: the items of a list in another order are.</summary>
    public void Write(int index, int column, string text)
    {
        var at = At(_starts[index]);
        Number(ref at);
        for (var before = 0; before < column; before++)
        {
            Cell(ref at);
        }

        var cell = Cell(ref at);
        var bytes = Encoding.UTF8.GetBytes(text);
        if (bytes.Length != cell.Length)
        {
            throw new InvalidOperationException($"'{text}' has {bytes.Length} bytes, expected {cell.Length}: a packed cell is only put in order.");
        }

        bytes.CopyTo(_chunks[(int)(_starts[index] >> 32)].AsSpan(^(at.Length + cell.Length)..));
    }

    /// <summary>The same rows in the order of their keys, byte by byte as SQLite sorts text. To be read only.</summary>
    public PackedRows InOrder()
    {
        for (var index = 1; index < _starts.Count; index++)
        {
            if (Compare(_starts[index - 1], _starts[index]) > 0)
            {
                return new PackedRows(_table, _chunks, [.. _starts.Order(Comparer<long>.Create(Compare))]);
            }
        }

        return this;
    }

    public IEnumerator<BookRow> GetEnumerator()
    {
        for (var index = 0; index < _starts.Count; index++)
        {
            yield return this[index];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private int Compare(long one, long other)
    {
        foreach (var column in _table.KeyIndexes)
        {
            if (Cell(one, column).SequenceCompareTo(Cell(other, column)) is var order && order != 0)
            {
                return order;
            }
        }

        return 0;
    }

    private ReadOnlySpan<byte> Cell(long start, int column)
    {
        var at = At(start);
        Number(ref at);
        for (var before = 0; before < column; before++)
        {
            Cell(ref at);
        }

        return Cell(ref at);
    }

    private ReadOnlySpan<byte> At(long start) => _chunks[(int)(start >> 32)].AsSpan((int)start);

    private static ReadOnlySpan<byte> Cell(scoped ref ReadOnlySpan<byte> at)
    {
        var length = (int)Number(ref at);
        var cell = at[..length];
        at = at[length..];
        return cell;
    }

    // Seven bits a byte, the lowest first; the eighth says that there are more.
    private static uint Number(scoped ref ReadOnlySpan<byte> at)
    {
        var (number, bits) = (0u, 0);
        byte next;
        do
        {
            next = at[0];
            at = at[1..];
            number |= (next & 0x7Fu) << bits;
            bits += 7;
        }
        while (next > 0x7F);
        return number;
    }

    private void Put(uint number)
    {
        for (; number > 0x7F; number >>= 7)
        {
            _chunks[^1][_used++] = (byte)(number | 0x80);
        }

        _chunks[^1][_used++] = (byte)number;
    }

    /// <summary>A column has the same text again and again: then it is the same instance.</summary>
    private sealed class Repeated
    {
        private const int MostBytes = 64;

        private readonly byte[] _bytes = new byte[MostBytes];
        private int _length;
        private string _text = "";

        public string Text(ReadOnlySpan<byte> cell)
        {
            if (cell.Length == 0)
            {
                return "";
            }

            if (cell.SequenceEqual(_bytes.AsSpan(0, _length)))
            {
                return _text;
            }

            var text = Encoding.UTF8.GetString(cell);
            if (cell.Length <= MostBytes)
            {
                cell.CopyTo(_bytes);
                (_length, _text) = (cell.Length, text);
            }

            return text;
        }
    }
}
