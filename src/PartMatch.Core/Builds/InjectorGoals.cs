using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Builds;

/// <summary>What the power goal asks of the injectors: the sums say which are enough, and their flow is then no fault.</summary>
internal static class InjectorGoals
{
    private const string RatedFlow = "rated-flow";
    private const string UsualDuty = "85 %";

    /// <summary>Does the goal size what sits there?</summary>
    public static bool Sets(BuildTerms terms, string position) =>
        terms.Build.Goal is { Power: not null, Speed: not null } && InjectorFits.FindPosition(terms.Facts.Family)?.Code == position;

    public static bool IsFlow(string? feature) => feature == RatedFlow;

    /// <summary>Whether each injector is enough for the goal, by part; empty where there is no goal of power, or the sums refuse it.</summary>
    public static IReadOnlyDictionary<string, SizedInjector> Size(BuildTerms terms)
    {
        var family = terms.Facts.Family;
        if (QuestionOf(terms) is not { } question || InjectorFits.FindPosition(family) is not { } position)
        {
            return new Dictionary<string, SizedInjector>();
        }

        return InjectorSizing.Size(question, [.. family.PartsOfKind(position.Kind)], family.EngineFacts, family.Variants) is InjectorsSized sized
            ? sized.Injectors.ToDictionary(injector => injector.Part, StringComparer.Ordinal)
            : new Dictionary<string, SizedInjector>();
    }

    /// <summary>The goal as the sums of the injectors take it; null where it names no power.</summary>
    public static InjectorQuestion? QuestionOf(BuildTerms terms) =>
        terms.Build.Goal is not { Power: { } power, Speed: { } speed } goal
        || Find(power, Dimension.Power) is not { } watts || Find(speed, Dimension.Speed) is not { } turns
            ? null
            : new InjectorQuestion(
                terms.Facts.Family.Family.Code, terms.Target, watts, turns, Find(goal.Boost ?? "0 bar", Dimension.Pressure)!, Find(goal.Pressure, Dimension.Pressure),
                goal.Supply is null ? null : Codes.Find<FuelSupply>(goal.Supply), Find(goal.Duty ?? UsualDuty, Dimension.Ratio)!,
                goal.Fuel ?? Mixture.Fuels.Petrol.Code)
            {
                IsBoostLeftOut = goal.Boost is null,
            };

    private static Quantity? Find(string? typed, Dimension dimension) =>
        typed is not null && QuantityRangeParser.Parse(typed, dimension) is RangeRead read ? read.Quantity : null;
}
