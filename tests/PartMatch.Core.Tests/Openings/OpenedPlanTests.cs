using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Openings;

/// <summary>What holds of the renewals and the order of work of every plan, on builds drawn at random. A failure prints the seed to draw it again.</summary>
public sealed class OpenedPlanTests
{
    private const int Draws = 150;

    [Fact]
    public void Nothing_that_is_disturbed_and_renewed_is_kept() => Each((told, plan) =>
    {
        var disturbed = Disturbed(told, plan);
        foreach (var row in Rows(told.Facts().Family.Renewals, row => row.Evidence).Where(row => disturbed.Contains(row.Opened)))
        {
            Assert.DoesNotContain(plan.Lines, line => line.Position == row.Renewed && IsKept(line));
        }
    });

    // The same number in the place of the donor's own costs money: where nothing was opened, and nobody asked for it, a cheapest plan does not do that.
    [Fact]
    public void Nothing_is_renewed_because_something_was_opened_that_was_not() => Each((told, plan) =>
    {
        foreach (var line in plan.Lines.Where(line => line.Because.StartsWith("Renewed because", StringComparison.Ordinal)))
        {
            var changed = plan.Lines.Where(one => one.Position != line.Position && IsChanged(told, one)).Select(one => one.Position).ToHashSet();
            var opened = Close(told, changed);
            Assert.Contains(Rows(told.Facts().Family.Renewals, row => row.Evidence), row => row.Renewed == line.Position && opened.Contains(row.Opened));
        }
    });

    [Fact]
    public void Every_step_of_the_order_stands_after_all_that_has_to_be_done_before_it() => Each((told, plan) =>
    {
        var order = WorkOrders.Order(told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary, told.Memory);
        var (off, on) = (order.TakeApart.Select(step => step.Position).ToList(), order.PutTogether.Select(step => step.Position).ToList());
        foreach (var row in Rows(told.Facts().Family.Openings, row => row.Evidence))
        {
            Assert.True(!row.HoldsFor("lark") || !off.Contains(row.Position) || !off.Contains(row.OffFirst) || off.IndexOf(row.OffFirst) < off.IndexOf(row.Position));
            Assert.True(!row.HoldsFor("swift") || !on.Contains(row.Position) || !on.Contains(row.OffFirst) || on.IndexOf(row.Position) < on.IndexOf(row.OffFirst));
        }

        foreach (var row in Rows(told.Facts().Family.BenchOrders, row => row.Evidence))
        {
            Assert.True(!row.HoldsFor("lark") || !off.Contains(row.First) || !off.Contains(row.Then) || off.IndexOf(row.Then) < off.IndexOf(row.First));
            Assert.True(!row.HoldsFor("swift") || !on.Contains(row.First) || !on.Contains(row.Then) || on.IndexOf(row.First) < on.IndexOf(row.Then));
        }

        Assert.All(order.TakeApart, step => Assert.All(step.After, before => Assert.True(off.IndexOf(before) < off.IndexOf(step.Position))));
        Assert.All(order.PutTogether, step => Assert.All(step.After, before => Assert.True(on.IndexOf(before) < on.IndexOf(step.Position))));
        Assert.Equal(Enumerable.Range(1, off.Count + on.Count), order.TakeApart.Concat(order.PutTogether).Select(step => step.Number));
        Assert.Equal(Disturbed(told, plan).Where(position => IsThere(told, position)).Order(), off.Order());
    });

    private static void Each(Action<TestBuild, BuildPlan> holds) => AnyRichBuild.Of.Sample(
        told =>
        {
            var plan = told.Plan();
            if (plan.Lines.Count > 0)
            {
                holds(told, plan);
            }
        },
        iter: Draws, threads: 1);

    private static IEnumerable<T> Rows<T>(IEnumerable<T> rows, Func<T, Evidence?> by) => rows.Where(row => by(row)?.IsRetracted != true);

    private static bool IsKept(BuildLine line) => line.Action is LineAction.Keep or LineAction.KeepWithWork;

    private static bool IsThere(TestBuild told, string position) => told.Facts().Family.FitmentsAt("lark", position).Any(fitment => fitment.Part is not null)
        && told.Build.Donor.States.LastOrDefault(state => state.Position == position)?.State != PartState.Missing;

    private static bool IsChanged(TestBuild told, BuildLine line) => !IsKept(line) && (line.Part is not null || line.OneOf.Count > 0 || IsThere(told, line.Position));

    private static HashSet<string> Disturbed(TestBuild told, BuildPlan plan) => Close(told, [.. plan.Lines.Where(line => IsChanged(told, line)).Select(line => line.Position)]);

    private static HashSet<string> Close(TestBuild told, HashSet<string> changed)
    {
        HashSet<string> all = [.. changed];
        foreach (var _ in AnyFamily.Positions)
        {
            all.UnionWith(Rows(told.Facts().Family.Openings, row => row.Evidence).Where(row => all.Contains(row.Position) && IsThere(told, row.OffFirst)).Select(row => row.OffFirst).ToList());
        }

        return all;
    }
}
