using System.Collections.Concurrent;
using System.Diagnostics;

namespace PartMatch.Web.Tests.Host;

/// <summary>The built server as a process of its own, as a user starts it; ended with its test.</summary>
internal sealed class ServerProcess : IAsyncDisposable
{
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(120);

    private readonly Process _process;
    private readonly ConcurrentQueue<string> _output = new();
    private readonly ConcurrentQueue<string> _errors = new();
    private readonly TaskCompletionSource<string?> _firstLine = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private ServerProcess(ProcessStartInfo start)
    {
        _process = new Process { StartInfo = start };
        _process.OutputDataReceived += (_, line) =>
        {
            _firstLine.TrySetResult(line.Data);
            Keep(_output, line.Data);
        };
        _process.ErrorDataReceived += (_, line) => Keep(_errors, line.Data);
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public IReadOnlyList<string> Output => [.. _output];

    public IReadOnlyList<string> Errors => [.. _errors];

    /// <param name="environment">Only what is named here, and PATH and the runtime's own folder, is set.</param>
    /// <param name="serverFolder">A copy of the server; the built one when null.</param>
    public static ServerProcess Start(IReadOnlyDictionary<string, string> environment, IReadOnlyList<string> arguments, string? serverFolder = null)
    {
        var folder = serverFolder ?? AppContext.BaseDirectory;
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder };
        start.ArgumentList.Add(Path.Combine(folder, "PartMatch.Web.dll"));
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        var kept = new[] { "PATH", "DOTNET_ROOT", "LANG" }.ToDictionary(name => name, Environment.GetEnvironmentVariable);
        start.Environment.Clear();
        foreach (var (name, value) in kept.Where(pair => pair.Value is not null).Concat(environment.Select(pair => KeyValuePair.Create(pair.Key, (string?)pair.Value))))
        {
            start.Environment[name] = value;
        }

        return new ServerProcess(start);
    }

    /// <summary>The address in the one line that a started server prints; fails with what it said when it does not start.</summary>
    public async Task<Uri> AddressAsync()
    {
        var line = await _firstLine.Task.WaitAsync(_patience, TestContext.Current.CancellationToken);
        Assert.True(line is not null, string.Join('\n', Errors));
        Assert.StartsWith("PartMatch listens on http://127.0.0.1:", line, StringComparison.Ordinal);
        return new Uri(line.Split(' ')[^1]);
    }

    public async Task<int> ExitCodeAsync()
    {
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(_patience, TestContext.Current.CancellationToken);
        return _process.ExitCode;
    }

    /// <summary>Asks it to stop, as a service manager does.</summary>
    public async Task TerminateAsync()
    {
        using var kill = Process.Start("kill", ["-TERM", _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Ends it at once and in the middle of anything: SIGKILL, which no program can see coming.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
    }

    private static void Keep(ConcurrentQueue<string> lines, string? line)
    {
        if (line is not null)
        {
            lines.Enqueue(line);
        }
    }
}
