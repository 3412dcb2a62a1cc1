using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>A demand of companion rules on a position.</summary>
/// <param name="Because">The rules that led to it, nearest last.</param>
/// <param name="Certain">Is it known that the rules hold?</param>
internal sealed record CompanionDemand(Condition Asks, IReadOnlyList<Companion> Because, bool Certain)
{
    public string Position => Asks.At.Position;

    /// <summary>The rule that asks for it itself.</summary>
    public Companion Rule => Because[^1];
}

/// <summary>What the demands of companion rules say for or against the part asked about.</summary>
internal static class CompanionReasons
{
    /// <summary>
    /// What rules of neighbours, as they will stand, ask of the part itself. What an unmet demand on a feature means is declared by the kind's rules
    /// for that feature; where it has none, the part stops here. A rule that only perhaps holds is shown and moves neither axis.
    /// </summary>
    public static IEnumerable<Reason> AgainstThePart(FamilyFacts facts, FitQuestion question, Part part, IReadOnlyList<CompanionDemand> demands)
    {
        var kind = facts.GetKind(facts.FindPosition(question.Position)!.Kind); // the question was checked against the family
        return demands.Where(demand => demand.Position == question.Position).SelectMany(demand =>
            kind.Rules.Where(meaning => demand.Certain && meaning.Feature == demand.Asks.At.Feature).Cast<Rule?>().DefaultIfEmpty(null)
                .Select(meaning => AgainstThePart(facts, part, demand, meaning)));
    }

    /// <param name="meaning">What it means that the demand is unmet; null where the kind declares nothing.</param>
    private static Reason AgainstThePart(FamilyFacts facts, Part part, CompanionDemand demand, Rule? meaning)
    {
        var (rule, has, asked) = (demand.Rule, ValueSelection.Of(part, demand.Asks.At.Feature), CompanionConditions.ValueOf(demand.Asks));
        var met = demand switch
        {
            // A rule that asks for no more than a bound is unmet only beyond the bound.
            { Asks.Relation: Relation.Same } when meaning is { Relation: Relation.AtLeast or Relation.AtMost } =>
                FeatureComparison.Compare(has, meaning.Relation, asked, meaning.Allowance),
            _ => demand.Asks.HoldsOf(part) is var holds && (demand.Certain || holds == Met.Yes) ? holds : Met.NotKnown,
        };
        var cause = facts.FindPosition(rule.When.At.Position)?.Name ?? rule.When.At.Position;
        var here = demand.Asks.At.Feature != Feature.Present.Code ? $"this part: {FitWording.Text(has)}" : part.IsNothing ? "there is none" : "there is one";
        var text = $"{cause} with {rule.When.InWords(facts)} goes only with {demand.Asks.InWords(facts)} here; {here}.";
        return new Reason("", ReasonBy.Companion, meaning?.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, met, text)
        {
            Code = rule.Code,
            Because = [.. demand.Because.Select(one => one.Code)],
            Feature = rule.Then.At.Feature,
            Relation = rule.Then.Relation,
            Effect = meaning?.Effect ?? (demand.Certain ? Effect.Stops : null),
            Work = meaning?.Work,
            Consequence = meaning?.Consequence,
            Part = FitWording.Shown(has, part: part.Id),
            Need = FitWording.Shown(asked, "companion"),
            Grade = DemandReasons.Weakest(rule.Evidence, has),
            Mend = met == Met.No ? $"change {cause} as well" : null,
            Cited = DemandReasons.EvidenceOf([has], rule.Evidence),
        };
    }

    /// <summary>Two certain demands on one position that no part can meet together.</summary>
    public static IEnumerable<Reason> Conflicts(FamilyFacts facts, IReadOnlyList<CompanionDemand> demands)
    {
        CompanionDemand[] certain = [.. demands.Where(demand => demand.Certain)];
        return
            from left in certain.Index()
            from right in certain.Skip(left.Index + 1)
            where right.Position == left.Item.Position && left.Item.Asks.Excludes(right.Asks)
            select Conflict(facts, left.Item, right);
    }

    private static Reason Conflict(FamilyFacts facts, CompanionDemand left, CompanionDemand right)
    {
        var (one, other) = (left.Rule, right.Rule);
        var name = facts.FindPosition(left.Position)?.Name ?? left.Position;
        var text = $"{name} would have to have {left.Asks.InWords(facts)} and also {right.Asks.InWords(facts)}: "
            + $"the rules {one.Code} and {other.Code} exclude each other here.";
        return new Reason("", ReasonBy.Companion, Axis.Mounts, Met.No, text)
        {
            Code = other.Code,
            Because = [.. left.Because.Concat(right.Because).Select(rule => rule.Code).Distinct(StringComparer.Ordinal)],
            Feature = other.Then.At.Feature,
            Relation = other.Then.Relation,
            Effect = Effect.Stops,
            Grade = (EvidenceGrade)Math.Min((int)ValueSelection.GradeOf(one.Evidence), (int)ValueSelection.GradeOf(other.Evidence)),
            Cited = [.. DemandReasons.EvidenceOf([], one.Evidence), .. DemandReasons.EvidenceOf([], other.Evidence)],
        };
    }
}
