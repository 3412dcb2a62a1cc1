using PartMatch.Storage;
using PartMatch.Storage.Books;
using PartMatch.Web.Builds;
using PartMatch.Web.Orders;

namespace PartMatch.Web.Host;

/// <summary>The database of this server, opened once at the start.</summary>
internal sealed class OpenedBase(IConfiguration configuration, ILogger<OpenedBase> logger) : IDisposable
{
    private Database? _database;

    public Database Database => _database ?? throw new InvalidOperationException("The start has not opened the database.");

    /// <summary>Opens the database; where there is none, makes one and loads the demo books and builds into it. The sentence that refuses, or null.</summary>
    public string? Open()
    {
        var (path, refusal) = DatabasePath.Read(configuration);
        if (path is null)
        {
            return refusal;
        }

        try
        {
            refusal = File.Exists(path) ? null : Make(path);
            _database = refusal is null ? Database.Open(path) : null;
            return refusal;
        }
        catch (DatabaseException unusable)
        {
            return unusable.Message;
        }
    }

    public void Dispose() => _database?.Dispose();

    /// <summary>
    /// Fills a new base beside its place and only then moves it there: a start that fails or is killed half-way leaves no base that looks complete.
    /// </summary>
    private string? Make(string path)
    {
        if (SeedBooks.FindFolder(configuration) is not { } seeds)
        {
            return null;
        }

        var draft = $"{path}.{Environment.ProcessId}.new";
        try
        {
            string? refusal;
            using (var database = Database.Open(draft))
            {
                refusal = SeedBooks.Load(seeds, new BookStore(database), logger) ?? SeedBuilds.Load(seeds, database, logger)
                    ?? SeedOrders.Load(seeds, database, logger);
            }

            if (refusal is null && !File.Exists(path))
            {
                File.Move(draft, path);
            }

            return refusal;
        }
        catch (Exception unwritable) when (unwritable is IOException or UnauthorizedAccessException)
        {
            return $"the database '{path}' cannot be made ({unwritable.Message.TrimEnd('.')}); set PartMatch:Database to a file in a folder that can be written.";
        }
        finally
        {
            foreach (var left in (string[])[draft, draft + "-wal", draft + "-shm"])
            {
                File.Delete(left);
            }
        }
    }
}
