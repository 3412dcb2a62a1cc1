using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Hosting.Internal;
using Microsoft.Extensions.Logging.Abstractions;
using PartMatch.Web.Builds;
using PartMatch.Web.Host;

namespace PartMatch.Web.Tests.Builds;

public sealed class BuildSolvesTests : IDisposable
{
    private readonly ApplicationLifetime _lifetime = new(NullLogger<ApplicationLifetime>.Instance);
    private readonly BuildSolves _solves;

    public BuildSolvesTests() =>
        _solves = new BuildSolves(new PlanSettings(new ConfigurationBuilder().Build()) { Patience = TimeSpan.FromMilliseconds(200) }, _lifetime);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => _solves.Dispose();

    [Fact]
    public async Task Third_question_gets_no_turn_until_one_of_two_has_ended()
    {
        using var first = await BeginAsync();
        var second = await BeginAsync();

        Assert.Null(await _solves.BeginAsync("other", Cancellation));

        second.Dispose();
        using var third = await _solves.BeginAsync("other", Cancellation);
        Assert.NotNull(third);
    }

    [Fact]
    public async Task Stopped_work_gives_what_it_has()
    {
        using var turn = await BeginAsync();
        using var other = await BeginAsync("other");
        var work = turn.RunAsync(WaitForStop);

        Assert.Equal(1, _solves.Stop("cart"));

        Assert.True(await work.WaitAsync(TimeSpan.FromSeconds(30), Cancellation));
        Assert.False(await other.RunAsync(stop => stop.IsCancellationRequested));
    }

    [Fact]
    public async Task Work_that_has_ended_cannot_be_stopped()
    {
        var turn = await BeginAsync();
        turn.Dispose();

        Assert.Equal(0, _solves.Stop("cart"));
    }

    [Fact]
    public async Task Work_of_one_who_has_left_is_stopped_and_answered_to_nobody()
    {
        using var gone = new CancellationTokenSource();
        using var turn = await _solves.BeginAsync("cart", gone.Token);
        var stopped = false;
        var work = turn!.RunAsync(stop => stopped = WaitForStop(stop)); // two turns are free

        await gone.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work.WaitAsync(TimeSpan.FromSeconds(30), Cancellation));
        Assert.True(stopped);
    }

    [Fact]
    public async Task Server_that_closes_stops_what_is_being_worked_out()
    {
        using var turn = await BeginAsync();
        var work = turn.RunAsync(WaitForStop);

        _lifetime.StopApplication();

        Assert.True(await work.WaitAsync(TimeSpan.FromSeconds(30), Cancellation));
    }

    [Theory]
    [InlineData("PartMatch:PlanEffort", "0")]
    [InlineData("PartMatch:PlanEffort", "much")]
    [InlineData("PartMatch:PlanEffort", "3601")]
    [InlineData("PartMatch:PlansAtOnce", "0")]
    [InlineData("PartMatch:PlansAtOnce", "65")]
    [InlineData("PartMatch:PlansAtOnce", "1.5")]
    public void Setting_that_cannot_be_is_refused_by_name(string setting, string value)
    {
        var refusal = Settings(setting, value).Refusal;

        Assert.StartsWith($"{setting} is '{value}', expected ", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Settings_on_their_bounds_hold()
    {
        Assert.Equal((0.5, null), (Settings("PartMatch:PlanEffort", "0.5").Effort.Work, Settings("PartMatch:PlanEffort", "0.5").Refusal));
        Assert.Equal(3600, Settings("PartMatch:PlanEffort", "3600").Effort.Work);
        Assert.Equal((1, 64), (Settings("PartMatch:PlansAtOnce", "1").AtOnce, Settings("PartMatch:PlansAtOnce", "64").AtOnce));
    }

    private static PlanSettings Settings(string setting, string value) => new(new ConfigurationBuilder().AddInMemoryCollection([new(setting, value)]).Build());

    private static bool WaitForStop(CancellationToken stop) => stop.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));

    private async Task<BuildSolve> BeginAsync(string build = "cart") =>
        await _solves.BeginAsync(build, Cancellation) ?? throw new InvalidOperationException("No turn was free.");
}
