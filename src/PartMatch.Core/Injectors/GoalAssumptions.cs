using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What the goal itself takes as true, for injectors and supply alike.</summary>
internal static class GoalAssumptions
{
    private const decimal UsualDuty = 0.85m;

    public static IEnumerable<Assumption> Of(InjectorGoal goal, InjectorEngine engine)
    {
        var question = goal.Question;
        if (question.IsBoostLeftOut)
        {
            yield return new Assumption("boost", Spread.Of(question.Boost).In(SumText.Bars, "0.00"), (engine.Boost, engine.BoostPa, engine.Induction) switch
            {
                ({ }, _, _) => "as recorded of this variant: what it was built for",
                (_, { }, _) or (_, _, "natural") => "none, as recorded of this variant",
                _ => "none: none was given and none is recorded of this variant",
            });
        }

        yield return new Assumption("duty", goal.Duty.In(SumText.Percent, "0.##"), question.Duty is { Value: UsualDuty, Low: null }
            ? "leaves an injector time to close, and something over for a low voltage (common practice, no source)"
            : "given in the question");
    }
}
