using PartMatch.Web.Host;

namespace PartMatch.Web.Builds;

/// <summary>The plans that are being worked out: only so many at once, and each can be stopped.</summary>
internal sealed class BuildSolves(PlanSettings settings, IHostApplicationLifetime lifetime) : IDisposable
{
    private readonly SemaphoreSlim _turns = new(settings.AtOnce);
    private readonly List<BuildSolve> _open = [];
    private readonly Lock _lock = new();

    /// <summary>A turn, to be disposed of afterwards; null where none came free in time.</summary>
    /// <param name="gone">Whoever asked has left: the work is stopped and nobody gets its answer.</param>
    public async Task<BuildSolve?> BeginAsync(string build, CancellationToken gone)
    {
        if (!await _turns.WaitAsync(settings.Patience, gone))
        {
            return null;
        }

        var solve = new BuildSolve(build, End, gone, lifetime.ApplicationStopping);
        lock (_lock)
        {
            _open.Add(solve);
        }

        return solve;
    }

    /// <summary>Stops all that is being worked out for the build; each answers with the best it has.</summary>
    /// <returns>How many were stopped.</returns>
    public int Stop(string build)
    {
        lock (_lock)
        {
            BuildSolve[] running = [.. _open.Where(solve => solve.Build == build)];
            Array.ForEach(running, solve => solve.Stop());
            return running.Length;
        }
    }

    public void Dispose() => _turns.Dispose();

    private void End(BuildSolve solve)
    {
        lock (_lock)
        {
            _open.Remove(solve);
        }

        _turns.Release();
    }
}

/// <summary>One turn.</summary>
internal sealed class BuildSolve(string build, Action<BuildSolve> end, CancellationToken gone, CancellationToken closing) : IDisposable
{
    private readonly CancellationTokenSource _stop = CancellationTokenSource.CreateLinkedTokenSource(gone, closing);

    public string Build { get; } = build;

    /// <summary>Does the work beside the threads that serve requests.</summary>
    /// <exception cref="OperationCanceledException">Whoever asked has left.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> work)
    {
        var answer = await Task.Run(() => work(_stop.Token), CancellationToken.None);
        gone.ThrowIfCancellationRequested();
        return answer;
    }

    public void Dispose()
    {
        end(this);
        _stop.Dispose();
    }

    internal void Stop() => _stop.Cancel();
}
