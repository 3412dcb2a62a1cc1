using System.Text;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace PartMatch.Storage.Books.Rows;

/// <summary>One insert for many rows, bound at SQLite itself: the parameters of the provider take longer than writing a row does.</summary>
internal sealed class PreparedInsert : IDisposable
{
    private readonly sqlite3 _base;
    private readonly sqlite3_stmt _statement;
    private readonly string?[] _bound;
    private byte[] _utf8 = new byte[1024];

    /// <param name="table">With its columns a name of our own: some are words of SQL.</param>
    public PreparedInsert(SqliteConnection connection, string table, IReadOnlyList<string> columns)
    {
        _base = connection.Handle ?? throw new InvalidOperationException("The connection is closed.");
        _bound = new string?[columns.Count];
        var (names, places) = (string.Join(", ", columns.Select(column => $"\"{column}\"")), string.Join(", ", columns.Select(_ => "?")));
        var sql = $"insert into \"{table}\" ({names}) values ({places})";
        SqliteException.ThrowExceptionForRC(raw.sqlite3_prepare_v2(_base, sql, out _statement), _base);
    }

    /// <summary>A text, a whole or a real number, or null. Stays bound for the rows that follow.</summary>
    public void Bind(int column, object? value)
    {
        switch (value)
        {
            case null:
                _bound[column] = null;
                Check(raw.sqlite3_bind_null(_statement, column + 1));
                break;
            case string text:
                Bind(column, text);
                break;
            case long whole:
                Check(raw.sqlite3_bind_int64(_statement, column + 1, whole));
                break;
            case double real:
                Check(raw.sqlite3_bind_double(_statement, column + 1, real));
                break;
            default:
                throw new ArgumentException($"A {value.GetType().Name} is no value of a column.", nameof(value));
        }
    }

    /// <summary>Text in UTF-8.</summary>
    public void BindUtf8(int column, ReadOnlySpan<byte> text) => Check(raw.sqlite3_bind_text(_statement, column + 1, text));

    /// <exception cref="SqliteException">The row cannot be written.</exception>
    public void Run()
    {
        var done = raw.sqlite3_step(_statement);
        raw.sqlite3_reset(_statement);
        if (done != raw.SQLITE_DONE)
        {
            SqliteException.ThrowExceptionForRC(done, _base);
        }
    }

    public void Dispose() => _statement.Dispose();

    private void Bind(int column, string text)
    {
        // Most cells of a column are the same text as in the row before, and the reader of the file gives equal texts once.
        if (ReferenceEquals(_bound[column], text))
        {
            return;
        }

        if (_utf8.Length < text.Length * 3)
        {
            _utf8 = new byte[text.Length * 3];
        }

        Check(raw.sqlite3_bind_text(_statement, column + 1, _utf8.AsSpan(0, Encoding.UTF8.GetBytes(text, _utf8))));
        _bound[column] = text;
    }

    private void Check(int code) => SqliteException.ThrowExceptionForRC(code, _base);
}
