using PartMatch.Core.LookAlikes;
using PartMatch.Storage.History;
using PartMatch.Storage.LookAlikes;

namespace PartMatch.Web.LookAlikes;

/// <summary>The one index of numbers: built beside the requests, replaced as a whole, and always as the base stands.</summary>
/// <remarks>
/// A search takes the index that is published and keeps it to its end, so it sees one state of the base. The first search after a write brings what the history
/// says has changed into a new index over the same table; where much has changed, a new table is built meanwhile.
/// </remarks>
internal sealed class NumberSource(NumberStore store, ILogger<NumberSource> logger) : IDisposable
{
    // Ours: comparing so many one by one takes about as long as the table does.
    private const int MostComparedOneByOne = 500;

    // Ours: reading more parts than that one by one is slower than scanning the base.
    private const int MostChangedParts = 5_000;

    private readonly Lock _lock = new();
    private volatile Published? _published;
    private Task? _building;
    private bool _stopped;

    /// <param name="Version">Of the base; taken before reading, so that a change meanwhile is looked for again.</param>
    private sealed record Published(long Version, HistoryEnd End, LookAlikeIndex Index);

    /// <summary>The index as the base stands, or null while there is none: then the base itself has to be searched.</summary>
    public LookAlikeIndex? Find()
    {
        var version = store.Version();
        return _published is { } published && published.Version == version ? published.Index : CatchUp(version);
    }

    /// <summary>The index as the base stands; waits for it where there is none.</summary>
    public LookAlikeIndex Get()
    {
        while (true)
        {
            if (Find() is { } index)
            {
                return index;
            }

            BuildInBackground().GetAwaiter().GetResult();
        }
    }

    /// <summary>The numbers near a key, from the index or, while there is none, from the base.</summary>
    public LookAlikeIndex Near(string key) => Find() ?? new LookAlikeIndex(store.Near(key).Numbers);

    /// <summary>Begins to build, where nobody does already.</summary>
    public Task BuildInBackground()
    {
        lock (_lock)
        {
            return _building is { IsCompleted: false } ? _building : _building = _stopped ? Task.CompletedTask : Task.Run(Build);
        }
    }

    /// <summary>Waits for a build that is under way: it reads from a base that is closed next.</summary>
    public void Dispose()
    {
        Task? building;
        lock (_lock)
        {
            (_stopped, building) = (true, _building);
        }

        building?.ContinueWith(_ => { }, TaskScheduler.Default).Wait();
    }

    private LookAlikeIndex? CatchUp(long version)
    {
        lock (_lock)
        {
            if (_published is { } published && published.Version != version)
            {
                var changed = store.Since(published.End, MostChangedParts);
                _published = changed is null ? null : new Published(version, changed.End,
                    changed.Parts.Count == 0 ? published.Index : published.Index.With(changed.Parts, changed.Numbers));
            }
        }

        var index = _published?.Index;
        if (index is null || index.Changed > MostComparedOneByOne)
        {
            _ = BuildInBackground();
        }

        return index;
    }

    private void Build()
    {
        var (version, read) = (store.Version(), store.All());
        var index = new LookAlikeIndex(read.Numbers);
        lock (_lock)
        {
            // A build that began before a change that is published by now: what came since is looked for by the next search.
            if (_published is null || _published.End.Change <= read.End.Change || _published.Index.Changed > 0)
            {
                _published = new Published(version, read.End, index);
            }
        }

        logger.LogInformation("{Count} numbers are ready to be searched for near ones", index.Count);
    }
}
