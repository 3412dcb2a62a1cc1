using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>The chain from the injectors back to the tank: which link gives out first, and at what power?</summary>
internal static class SupplyChain
{
    public static IReadOnlyList<SupplyLink> Of(SupplyQuestion question, SupplyGoal goal, IdleNeed? idle) =>
    [
        Injectors(question, goal), Regulator(question, goal), .. ReturnPath.Of(question, goal, idle) is { } back ? new[] { back } : [], Line(question, goal),
        Pump(question, goal),
    ];

    /// <summary>In words, with the links of which nothing is known.</summary>
    public static string First(IReadOnlyList<SupplyLink> links, double goalW)
    {
        // The return gives out at idle, not at a power: its own line says so.
        var unknown = links.Where(link => link.Enough == Enough.NotKnown && link.Power is null
            && link.Link != ReturnPath.Link).Select(link => link.Link).ToList();
        var open = unknown.Count == 0 ? "" : $" Not known: {string.Join(", ", unknown)}.";
        return links.Where(link => link.Power is not null).MinBy(link => link.Power?.Expected) is { Power: { } power } first
            ? $"{(unknown.Count == 0 ? "The" : "Of the links that are known the")} {first.Link} give{(first.Link == "injectors" ? "" : "s")} out first, "
                + $"at {power.Text}; the goal is {SumText.In(SumText.Kilowatts, goalW, "0.##")}.{open}"
            : $"Which link gives out first is not known.{open}";
    }

    private static SupplyLink Injectors(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Injector is not { } injector)
        {
            return new SupplyLink("injectors", null, Enough.NotKnown, "No injector is recorded for this variant: give injector=.");
        }

        var judged = InjectorJudgement.Of(goal.Goal, StagedSecond.Of(goal.Goal), null, null, injector);
        return new SupplyLink("injectors", injector.Id, judged.Enough, judged.Because) { Power = judged.PowerAtDuty, Working = judged.Working };
    }

    private static SupplyLink Regulator(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Regulator is not { } regulator)
        {
            return new SupplyLink("regulator", null, Enough.NotKnown, "No regulator is recorded for this variant.");
        }

        var rail = goal.Goal.Rail;
        if (rail.Supply == FuelSupply.ReturnlessControlled)
        {
            return new SupplyLink("regulator", regulator.Id, Enough.NotKnown,
                "A control unit sets the rail that the question takes: what this regulator does beside it is not known.");
        }

        var (set, reference) = (ValueSelection.Of(regulator, "set-pressure"), ValueSelection.Of(regulator, "reference"));
        var wanted = rail.Supply == FuelSupply.ReturnManifold ? "manifold" : "ambient";
        if (reference is StatedChoices { Choices: [var open] } && open != wanted)
        {
            return new SupplyLink("regulator", regulator.Id, Enough.No, $"Not as asked: its spring side is open to {open}, the question takes {wanted}.");
        }

        if (set is not StatedQuantity { Possible: { Low: { } low, High: { } high } } pressure)
        {
            return new SupplyLink("regulator", regulator.Id, Enough.NotKnown, "Its set pressure is not recorded.");
        }

        var holds = (double)low <= rail.PressurePa.High && (double)high >= rail.PressurePa.Low;
        return new SupplyLink("regulator", regulator.Id, holds ? Enough.Yes : Enough.No,
            holds ? $"It holds {pressure.Text} over {(wanted == "manifold" ? "the manifold" : "ambient")}."
                : $"Not as asked: it holds {pressure.Text}, the question takes {SumText.InBar(rail.PressurePa)}.");
    }

    // The loss grows with the square of the flow, so with the square of the power: at which power does it lift the pump to its relief valve?
    private static SupplyLink Line(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Pump is not { } pump || PumpJudgement.ReliefOf(pump) is not { } relief)
        {
            return new SupplyLink("line", null, Enough.NotKnown,
                "The relief pressure of the pump is not recorded: how much loss the line may have is not known.");
        }

        var (rail, loss, atPump) = (goal.Goal.Rail.Gauge, goal.LineLoss.Spread, goal.AtPumpPa);
        var enough = atPump.High < relief.Low ? Enough.Yes : atPump.Expected >= relief.Expected ? Enough.No : Enough.NotKnown;
        var because = $"Rail {SumText.InBar(rail)} and {SumText.InBar(loss)} of loss are {SumText.InBar(atPump)} at the pump; its relief valve opens at {SumText.InBar(relief)}.";
        if (loss.Low <= 0)
        {
            return new SupplyLink("line", null, enough, because);
        }

        var power = (relief - rail).NotNegative() / loss;
        return new SupplyLink("line", null, enough, because)
        {
            Power = (power.SquareRoot() * goal.Goal.PowerW).In(SumText.Kilowatts, "0"),
            Working =
            [
                new("power at which the loss opens the relief valve", "goal × √((relief − rail) ÷ loss at the goal)",
                    $"{SumText.In(SumText.Kilowatts, goal.Goal.PowerW.Expected, "0.##")} × √(({SumText.InBar(relief.Expected)} − {SumText.InBar(rail.Expected)}) ÷ {SumText.InBar(loss.Expected)})",
                    SumText.In(SumText.Kilowatts, Math.Sqrt(power.Expected) * goal.Goal.PowerW.Expected, "0"),
                        "loss ∝ flow², turbulent flow (from memory); the pump alone gives out much earlier as a rule"),
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
