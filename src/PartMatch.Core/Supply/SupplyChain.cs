using PartMatch.Core.Injectors;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>The chain from the injectors back to the tank: which link gives out first, and at what power?</summary>
internal static class SupplyChain
{
    public static IReadOnlyList<SupplyLink> Of(SupplyQuestion question, SupplyGoal goal, IdleNeed? idle) =>
    [
        Injectors(question, goal), RegulatorLink.Of(question, goal), .. ReturnPath.Of(question, goal, idle) is { } back ? new[] { back } : [], Line(question, goal),
        Pump(question, goal),
    ];

    private static SupplyLink Injectors(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Injector is not { } injector)
        {
            return new SupplyLink("injectors", null, Enough.NotKnown, "No injector is recorded for this variant: give injector=.");
        }

        var judged = InjectorJudgement.Of(goal.Goal, StagedSecond.Of(goal.Goal), null, null, injector);
        return new SupplyLink("injectors", injector.Id, judged.Enough, judged.Because) { Power = judged.PowerAtDuty, Working = judged.Working };
    }

    // The loss grows with the square of the flow: at which flow does it lift the pump to its relief valve?
    private static SupplyLink Line(SupplyQuestion question, SupplyGoal goal)
    {
        var relief = question.Pump is { } pump ? PumpJudgement.ReliefOf(pump) : null;
        var opens = relief is { } valve ? $"the relief valve of the pump opens at {SumText.InBar(valve)}" : "the relief pressure of the pump is not recorded";
        if (!goal.Line.IsMeasured)
        {
            return new SupplyLink("line", null, Enough.NotKnown,
                $"Not known: its loss is not recorded. With the usual {goal.Line.Text} the pump would see {SumText.InBar(goal.AtPumpPa)} at the goal; {opens}. "
                + "Read the pressure at the pump and at the rail at a known flow, and give line-loss= and line-loss-flow=.");
        }

        if (relief is not { } limit)
        {
            return new SupplyLink("line", null, Enough.NotKnown,
                "The relief pressure of the pump is not recorded: how much loss the line may have is not known.");
        }

        var (rail, lost, atPump) = (goal.Goal.Rail.Gauge, goal.LostPa, goal.AtPumpPa);
        var enough = atPump.High < limit.Low ? Enough.Yes : atPump.Expected >= limit.Expected ? Enough.No : Enough.NotKnown;
        var link = new SupplyLink("line", null, enough,
            $"Rail {SumText.InBar(rail)} and {SumText.InBar(lost)} of loss are {SumText.InBar(atPump)} at the pump; {opens}.");
        if (goal.Line.Loss.Spread.Low <= 0)
        {
            return link;
        }

        var flow = goal.Line.FlowThatLoses(limit - rail);
        var power = PumpJudgement.PowerOf(goal, flow);
        return link with
        {
            Power = power.In(SumText.Kilowatts, "0"),
            Working =
            [
                new("flow at which the loss opens the relief valve", "flow at which the loss was measured × √((relief − rail) ÷ that loss)",
                    $"{goal.Line.AtM3S.Text} × √(({SumText.InBar(limit.Expected)} − {SumText.InBar(rail.Expected)}) ÷ {SumText.InBar(goal.Line.Loss.Spread.Expected)})",
                    SumText.In(SumText.LitresPerHour, flow.Expected, "0"), "loss ∝ flow², turbulent flow (from memory); the pump alone gives out much earlier as a rule"),
                PumpJudgement.PowerStep(goal, flow, "that flow", "the sums above turned round"),
            ],
        };
    }

    private static SupplyLink Pump(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Pump is not { } pump)
        {
            return new SupplyLink("pump", null, Enough.NotKnown, "No pump is recorded for this variant: give pump=.");
        }

        var judged = PumpJudgement.Of(goal, pump);
        return new SupplyLink("pump", pump.Id, judged.Enough, judged.Because) { Power = judged.Power, Working = judged.Working };
    }
}
