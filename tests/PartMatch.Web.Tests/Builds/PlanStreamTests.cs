using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Hosting.Internal;
using Microsoft.Extensions.Logging.Abstractions;
using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Web.Builds;
using PartMatch.Web.Host;

namespace PartMatch.Web.Tests.Builds;

public sealed class PlanStreamTests : IDisposable
{
    private readonly ApplicationLifetime _lifetime = new(NullLogger<ApplicationLifetime>.Instance);
    private readonly BuildSolves _solves;

    public PlanStreamTests() => _solves = new BuildSolves(
        new PlanSettings(new ConfigurationBuilder().AddInMemoryCollection([new("PartMatch:PlansAtOnce", "1")]).Build()) { Patience = TimeSpan.Zero }, _lifetime);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => _solves.Dispose();

    [Fact]
    public async Task Steps_are_told_before_the_plan_and_the_turn_is_given_back()
    {
        var lines = await ReadAsync((told, _) =>
        {
            told(new PlanProgress(null, 5));
            told(new PlanProgress(7, 6));
            return Plan(PlanStatus.ProvenOptimal);
        });

        Assert.InRange(lines.Count, 2, 3); // a slow reader misses steps in between
        Assert.Equal((7, 6), (lines[^2].GetProperty("best").GetInt64(), lines[^2].GetProperty("bound").GetInt64()));
        Assert.Equal("proven-optimal", lines[^1].Text("status"));
        Assert.NotNull(await _solves.BeginAsync("cart", Cancellation));
    }

    [Fact]
    public async Task Stopped_plan_is_the_last_line()
    {
        var lines = await ReadAsync((told, stop) =>
        {
            told(new PlanProgress(7, 5));
            Assert.Equal(1, _solves.Stop("cart"));
            return Plan(stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.ProvenOptimal);
        });

        Assert.Equal("stopped-by-you", lines[^1].Text("status"));
    }

    [Fact]
    public async Task Fault_of_the_work_reaches_the_catch_all_and_gives_the_turn_back()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => ReadAsync((_, _) => throw new InvalidOperationException("a bug")));
        Assert.NotNull(await _solves.BeginAsync("cart", Cancellation));
    }

    [Theory]
    [InlineData("application/jsonl", true)]
    [InlineData("application/json, application/jsonl;q=0.5", true)]
    [InlineData("application/jsonl;q=0", false)]
    [InlineData("application/json", false)]
    [InlineData("*/*", false)]
    [InlineData("", false)]
    public void Lines_are_told_to_who_asks_for_them(string accept, bool wanted)
    {
        var context = new DefaultHttpContext();
        context.Request.Headers.Accept = accept;

        Assert.Equal(wanted, JsonLines.IsWanted(context.Request));
    }

    private static BuildPlan Plan(PlanStatus status) => new()
    {
        Asked = new PlanAsked("cart", 1, PlanObjective.Cheapest, new DateOnly(2026, 12, 1)),
        Status = status,
        HeadlineText = "as tested",
    };

    private async Task<IReadOnlyList<JsonElement>> ReadAsync(Func<Action<PlanProgress>, CancellationToken, BuildPlan> plan)
    {
        var turn = await _solves.BeginAsync("cart", Cancellation) ?? throw new InvalidOperationException("No turn was free.");
        using var body = new MemoryStream();
        var context = new DefaultHttpContext { Response = { Body = body } };
        await new PlanStream<PlanProgress, BuildPlan>(turn, plan).ExecuteAsync(context);

        Assert.StartsWith("application/jsonl", context.Response.ContentType, StringComparison.Ordinal);
        var text = Encoding.UTF8.GetString(body.ToArray());
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        return [.. text.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement)];
    }
}
