using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.Tests.History;

/// <summary>A base as it stood once, to be put in the place of the one that is open.</summary>
internal sealed class KeptCopy : IDisposable
{
    private readonly SqliteConnection _live;
    private readonly SqliteConnection _kept = new("Data Source=:memory:");

    public KeptCopy(string path)
    {
        _live = new SqliteConnection($"Data Source={path};Pooling=false");
        _live.Open();
        _kept.Open();
        _live.BackupDatabase(_kept);
    }

    public void PutBack() => _kept.BackupDatabase(_live);

    public void Dispose()
    {
        _live.Dispose();
        _kept.Dispose();
    }
}
