using PartMatch.Storage.History;
using PartMatch.Storage.Parts;

namespace PartMatch.Web.Parts;

/// <summary>The one index of parts: built beside the requests, replaced as a whole, and always as the base stands.</summary>
/// <remarks>
/// Kept as <see cref="LookAlikes.NumberSource"/> keeps the index of numbers. One class for both would have to be told what is read, how a change comes into it,
/// how much of it has changed and what is said of it: more than what the two have in common.
/// </remarks>
internal sealed class PartIndexSource(PartStore store, ILogger<PartIndexSource> logger) : IDisposable
{
    // Ours: few beside all parts, so that searching them apart adds little.
    private const int MostSearchedApart = 500;

    // Ours: reading more parts than that one by one is slower than scanning the base.
    private const int MostChangedParts = 5_000;

    private readonly Lock _lock = new();
    private volatile Published? _published;
    private Task? _building;
    private bool _stopped;

    /// <param name="Version">Of the base; taken before reading, so that a change meanwhile is looked for again.</param>
    private sealed record Published(long Version, HistoryEnd End, PartIndex Index);

    /// <summary>The index as the base stands, or null while there is none: then the base itself has to be searched.</summary>
    public PartIndex? Find()
    {
        var version = store.Version();
        return _published is { } published && published.Version == version ? published.Index : CatchUp(version);
    }

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

    private PartIndex? CatchUp(long version)
    {
        lock (_lock)
        {
            if (_published is { } published && published.Version != version)
            {
                _published = store.Index(published.Index, published.End, MostChangedParts) is var (end, index) ? new Published(version, end, index) : null;
            }
        }

        var found = _published?.Index;
        if (found is null || found.Changed > MostSearchedApart)
        {
            _ = BuildInBackground();
        }

        return found;
    }

    private void Build()
    {
        var (version, (end, index)) = (store.Version(), store.Index());
        lock (_lock)
        {
            // A build that began before a change that is published by now: what came since is looked for by the next search.
            if (_published is null || _published.End.Change <= end.Change || _published.Index.Changed > 0)
            {
                _published = new Published(version, end, index);
            }
        }

        logger.LogInformation("Parts are ready to be searched by numbers and names");
    }
}
