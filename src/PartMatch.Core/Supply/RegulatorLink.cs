using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Does the regulator hold what is asked, and can it pass what the pump gives beyond what is burnt at the goal?</summary>
internal static class RegulatorLink
{
    private const string Link = "regulator";

    private const string Measure = "read the rail pressure under load on a gauge, or give return-capacity=";

    public static SupplyLink Of(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Regulator is not { } regulator)
        {
            return new SupplyLink(Link, null, Enough.NotKnown, "No regulator is recorded for this variant.");
        }

        SupplyLink Judged(Enough enough, string because) => new(Link, regulator.Id, enough, because);
        var rail = goal.Goal.Rail;
        if (rail.Supply == FuelSupply.ReturnlessControlled)
        {
            return Judged(Enough.NotKnown, "A control unit sets the rail that the question takes: what this regulator does beside it is not known.");
        }

        var (set, reference) = (ValueSelection.Of(regulator, "set-pressure"), ValueSelection.Of(regulator, "reference"));
        var wanted = rail.Supply == FuelSupply.ReturnManifold ? "manifold" : "ambient";
        if (reference is StatedChoices { Choices: [var open] } && open != wanted)
        {
            return Judged(Enough.No, $"Not as asked: its spring side is open to {open}, the question takes {wanted}.");
        }

        if (set is not StatedQuantity { Possible: { Low: { } low, High: { } high } } pressure)
        {
            return Judged(Enough.NotKnown, "Its set pressure is not recorded.");
        }

        if ((double)low > rail.PressurePa.High || (double)high < rail.PressurePa.Low)
        {
            return Judged(Enough.No, $"Not as asked: it holds {pressure.Text}, the question takes {SumText.InBar(rail.PressurePa)}.");
        }

        return Carrying(question, goal, Judged, $"it holds {pressure.Text} over {(wanted == "manifold" ? "the manifold" : "ambient")}");
    }

    private static SupplyLink Carrying(SupplyQuestion question, SupplyGoal goal, Func<Enough, string, SupplyLink> judged, string holds)
    {
        if (ReturnPath.CapacityOf(question) is not { } capacity)
        {
            return judged(Enough.NotKnown, $"Not known: {holds}, but what flow it passes is not recorded: {Measure}.");
        }

        var carries = capacity.In(SumText.LitresPerHour, "0").Text;
        if (PastIt(question, goal) is not { } past)
        {
            return judged(Enough.NotKnown, $"Not known: {holds} and passes {carries}, but what the pump gives at the goal is not known: {Measure}.");
        }

        var must = $"{holds} and passes {carries}; of what the pump gives at the goal {past.In(SumText.LitresPerHour, "0").Text} is not burnt and has to pass it";
        return past.Expected > capacity.Expected ? judged(Enough.No, $"Not enough: {must}.")
            : past.High <= capacity.Low ? judged(Enough.Yes, $"Enough even in the worst case: {must}.")
            : judged(Enough.NotKnown, $"Not sure: {must}: {Measure}.");
    }

    private static Spread? PastIt(SupplyQuestion question, SupplyGoal goal) =>
        question.Pump is { } pump && RecordedTable.Find(pump, "flow") is { } table
        && PumpPoint.Of(table, Spread.Of(goal.PumpVoltage), goal.Goal.Rail.Gauge, goal.Line) is { FlowM3S: { } flow, IsLeast: false }
            ? (flow - goal.BurntM3S).NotNegative()
            : null;
}
