using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>
/// What must also change: the least fixed point over (position, demand), so that loops end. A rule whose "when" holds asks for its "then";
/// a demand that implies another rule's "when" goes on.
/// </summary>
internal sealed class CompanionClosure
{
    /// <summary>A demand on a position, with the rules that led to it, nearest last.</summary>
    private sealed record Demand(Condition Asks, IReadOnlyList<Companion> Because, bool Certain)
    {
        public string Position => Asks.At.Position;
    }

    private readonly FamilyFacts _facts;
    private readonly FitQuestion _question;
    private readonly Part _part;
    private readonly Neighbours _neighbours;
    private readonly bool _isAsBuilt;
    private readonly Companion[] _rules;
    private readonly List<Demand> _demands = [];

    private CompanionClosure(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours, bool isAsBuilt)
    {
        (_facts, _question, _part, _neighbours, _isAsBuilt) = (facts, question, part, neighbours, isAsBuilt);
        _rules = [.. facts.Companions.Where(rule => rule.HoldsFor(question.Variant) && rule.Evidence?.IsRetracted != true)];
    }

    /// <summary>Changes that must, and that perhaps must, be made elsewhere; and what the rules say against the part itself.</summary>
    internal sealed record Outcome(IReadOnlyList<CompanionChange> AlsoNeeded, IReadOnlyList<CompanionChange> PerhapsNeeded, IReadOnlyList<Reason> Reasons);

    /// <summary>Works out the closure and tells the neighbours what they will be once it is done.</summary>
    /// <param name="isAsBuilt">The maker's own part among the maker's own neighbours: what is not recorded beside it needs no change.</param>
    public static Outcome Work(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours, bool isAsBuilt)
    {
        var closure = new CompanionClosure(facts, question, part, neighbours, isAsBuilt);

        // The part may ask something of its neighbours; the neighbours, as they will then be, may ask something of the part.
        closure.Close(closure._rules.Where(rule => rule.When.At.Position == question.Position));
        closure.Make(closure.AlsoNeeded());
        closure.Close(closure._rules.Where(rule => rule.When.At.Position != question.Position && rule.Then.At.Position == question.Position));
        var also = closure.AlsoNeeded();
        closure.Make(also);
        return new Outcome(also, closure.PerhapsNeeded(also), [.. closure.AgainstThePart(), .. closure.Conflicts()]);
    }

    /// <summary>Every position that the rules can look at for this question, its own included.</summary>
    public static HashSet<string> Reach(FamilyFacts facts, FitQuestion question)
    {
        Companion[] rules = [.. facts.Companions.Where(rule => rule.HoldsFor(question.Variant))];
        var reach = new HashSet<string>(StringComparer.Ordinal) { question.Position };
        while (rules.FirstOrDefault(rule => reach.Contains(rule.When.At.Position) && !reach.Contains(rule.Then.At.Position)) is { } next)
        {
            reach.Add(next.Then.At.Position);
        }

        reach.UnionWith(rules.Where(rule => rule.Then.At.Position == question.Position).Select(rule => rule.When.At.Position));
        return reach;
    }

    private void Close(IEnumerable<Companion> first)
    {
        var next = _demands.Count;
        foreach (var rule in first)
        {
            Ask(rule, HoldsAt(rule.When, _neighbours.At), []);
        }

        for (; next < _demands.Count; next++)
        {
            var demand = _demands[next];
            foreach (var rule in _rules.Where(rule => rule.When.At == demand.Asks.At && Implies(demand.Asks, rule.When)))
            {
                Ask(rule, demand.Certain ? Met.Yes : Met.NotKnown, demand.Because);
            }
        }
    }

    private void Ask(Companion rule, Met when, IReadOnlyList<Companion> because)
    {
        var certain = when == Met.Yes;
        if (when == Met.No || _demands.Exists(demand => Equal(demand.Asks, rule.Then) && (demand.Certain || !certain)))
        {
            return;
        }

        _demands.Add(new Demand(rule.Then, [.. because, rule], certain));
    }

    private void Make(IEnumerable<CompanionChange> changes)
    {
        foreach (var change in changes)
        {
            if (CertainOn(change.Position).Any(demand => IsLeaveOff(demand.Asks)))
            {
                _neighbours.LeaveOff(change.Position);
                continue;
            }

            Choose(change.Position, [.. change.Parts.Select(_facts.FindPart).OfType<Part>()]);
        }
    }

    /// <summary>One part is chosen, never features of two: the one that mates best with the part asked about, else the first.</summary>
    private void Choose(string position, IReadOnlyList<Part> candidates)
    {
        int Unmet(Part candidate, Func<Reason, bool> counts)
        {
            _neighbours.Change(position, candidate);
            return JointReasons.Judge(_facts, _question, _part, _neighbours).Concat(StackReasons.Judge(_facts, _question, _part, _neighbours)).Count(counts);
        }

        var best = candidates.Count switch
        {
            0 => null,
            1 => candidates[0],
            _ => candidates.OrderBy(candidate => Unmet(candidate, reason => reason is { Met: Met.No, Effect: Effect.Stops }))
                .ThenBy(candidate => Unmet(candidate, reason => reason.Met == Met.No)).ThenBy(candidate => Unmet(candidate, reason => reason.Met == Met.NotKnown)).First(),
        };
        _neighbours.Change(position, best);
    }

    private IEnumerable<Demand> CertainOn(string position) => _demands.Where(demand => demand.Position == position && demand.Certain);

    private IReadOnlyList<string> Elsewhere => [.. _demands.Select(demand => demand.Position).Where(position => position != _question.Position).Distinct()];

    /// <summary>Positions where something is certainly demanded that what sits there is not known to meet.</summary>
    private List<CompanionChange> AlsoNeeded() =>
    [
        .. Elsewhere.Where(position => CertainOn(position).Any(demand => AsItStands(demand) is var met && (met == Met.No || (met == Met.NotKnown && !_isAsBuilt))))
            .Select(position => Change(position, [.. CertainOn(position)], certain: true)),
    ];

    private List<CompanionChange> PerhapsNeeded(List<CompanionChange> also) =>
    [
        .. Elsewhere.Where(position => !also.Exists(change => change.Position == position) && _demands.Exists(demand => demand.Position == position && AsItStands(demand) != Met.Yes))
            .Select(position => Change(position, _demands.FindAll(demand => demand.Position == position), certain: false)),
    ];

    /// <param name="demands">Every demand that a part at the position has to meet.</param>
    private CompanionChange Change(string position, List<Demand> demands, bool certain)
    {
        var open = demands.FindAll(demand => AsItStands(demand) != Met.Yes);
        var name = _facts.FindPosition(position)?.Name ?? position;
        var demanded = string.Join(" and ", open.Select(demand => InWords(demand.Asks)).Distinct());
        var leftOff = open.Exists(demand => IsLeaveOff(demand.Asks));
        string[] parts = leftOff || _facts.FindPosition(position) is not { } at
            ? []
            : [.. _facts.PartsOfKind(at.Kind).Where(part => demands.TrueForAll(demand => Holds(part, demand.Asks) == Met.Yes)).Select(part => part.Id)];
        var known = leftOff ? "Leave it off." : parts.Length == 0 ? "No known part meets this." : $"Known to meet it: {FitWording.Some(parts)}.";
        var held = Held(position);
        return new CompanionChange(
            position, demanded, [.. open.SelectMany(demand => demand.Because).Select(rule => rule.Code).Distinct(StringComparer.Ordinal)], held, parts,
            $"{name} {(certain ? "must have" : "may have to have")} {demanded}; now there: {held}. {known}");
    }

    /// <summary>
    /// What rules of neighbours, as they will stand, ask of the part itself. What an unmet demand on a feature means is declared by the kind's rules
    /// for that feature; where it has none, the part stops here. A rule that only perhaps holds is shown and moves neither axis.
    /// </summary>
    private IEnumerable<Reason> AgainstThePart()
    {
        var kind = _facts.GetKind(_facts.FindPosition(_question.Position)!.Kind); // the question was checked against the family
        foreach (var demand in _demands.Where(demand => demand.Position == _question.Position))
        {
            var met = Holds(_part, demand.Asks);
            var rule = demand.Because[^1];
            var has = ValueSelection.Of(_part, demand.Asks.At.Feature);
            var cause = _facts.FindPosition(rule.When.At.Position)?.Name ?? rule.When.At.Position;
            met = demand.Certain || met == Met.Yes ? met : Met.NotKnown;
            var here = demand.Asks.At.Feature != Feature.Present.Code ? $"this part: {FitWording.Text(has)}" : _part.IsNothing ? "there is none" : "there is one";
            var text = $"{cause} with {InWords(rule.When)} goes only with {InWords(demand.Asks)} here; {here}.";
            Rule?[] meanings = [.. kind.Rules.Where(meaning => demand.Certain && meaning.Feature == demand.Asks.At.Feature)];
            foreach (var meaning in meanings.DefaultIfEmpty(null))
            {
                // A rule that asks for no more than a bound is unmet only beyond the bound.
                var bounded = demand.Asks.Relation == Relation.Same && meaning?.Relation is (Relation.AtLeast or Relation.AtMost);
                var metHere = bounded ? FeatureComparison.Compare(has, meaning!.Relation, ValueSelection.Of(demand.Asks.Value, null), meaning.Allowance) : met; // bounded only with a meaning
                yield return new Reason("", ReasonBy.Companion, meaning?.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, metHere, text)
                {
                    Code = rule.Code,
                    Feature = rule.Then.At.Feature,
                    Relation = rule.Then.Relation,
                    Effect = meaning?.Effect ?? (demand.Certain ? Effect.Stops : null),
                    Work = meaning?.Work,
                    Consequence = meaning?.Consequence,
                    Part = FitWording.Shown(has, part: _part.Id),
                    Need = FitWording.Shown(ValueSelection.Of(demand.Asks.Value, null), "companion"),
                    Grade = DemandReasons.Weakest(rule.Evidence, has),
                    Mend = metHere == Met.No ? $"change {cause} as well" : null,
                    Cited = DemandReasons.EvidenceOf([has], rule.Evidence),
                };
            }
        }
    }

    /// <summary>Two certain demands on one position that no part can meet together.</summary>
    private IEnumerable<Reason> Conflicts()
    {
        var certain = _demands.FindAll(demand => demand.Certain);
        foreach (var (index, left) in certain.Index())
        {
            foreach (var right in certain.Skip(index + 1).Where(right => right.Position == left.Position && Exclude(left.Asks, right.Asks)))
            {
                var name = _facts.FindPosition(left.Position)?.Name ?? left.Position;
                var (one, other) = (left.Because[^1], right.Because[^1]);
                yield return Conflict(other, $"{name} would have to have {InWords(left.Asks)} and also {InWords(right.Asks)}: the rules {one.Code} and {other.Code} exclude each other here.") with
                {
                    Grade = (EvidenceGrade)Math.Min((int)ValueSelection.GradeOf(one.Evidence), (int)ValueSelection.GradeOf(other.Evidence)),
                    Cited = [.. DemandReasons.EvidenceOf([], one.Evidence), .. DemandReasons.EvidenceOf([], other.Evidence)],
                };
            }
        }
    }

    private Met AsItStands(Demand demand) => HoldsAt(demand.Asks, _neighbours.AsItStands);

    private Met HoldsAt(Condition condition, Func<string, Neighbour> at)
    {
        if (condition.At.Position == _question.Position)
        {
            return Holds(_part, condition);
        }

        return at(condition.At.Position) switch
        {
            PartThere there => there.Parts.Select(part => Holds(part, condition)).Distinct().ToArray() is [var met] ? met : Met.NotKnown,
            NothingThere => condition.At.Feature == Feature.Present.Code ? Holds(ValueSelection.PresentAs("no"), condition) : Met.No,
            _ => Met.NotKnown,
        };
    }

    internal static Met Holds(Part part, Condition condition) => Holds(ValueSelection.Of(part, condition.At.Feature), condition);

    /// <summary>"Same" for a quantity: the recorded band contains the value asked for.</summary>
    private static Met Holds(KnownValue value, Condition condition) => (value, condition.Value, condition.Relation) switch
    {
        (StatedQuantity has, QuantityReading asked, Relation.Same) => FeatureComparison.AsMet(new Interval(asked.Value, asked.Value).LiesIn(has.Possible)),
        _ => FeatureComparison.Compare(value, condition.Relation, ValueSelection.Of(condition.Value, null), allowance: 0),
    };

    /// <summary>Does a part that meets the first condition surely meet the second? Only asked of one feature of one position.</summary>
    private static bool Implies(Condition demand, Condition when) => (demand.Relation, when.Relation) switch
    {
        (Relation.Same or Relation.OneOf, _) => Values(demand).All(value => Met.Yes == FeatureComparison.Compare(value, when.Relation, ValueSelection.Of(when.Value, null), allowance: 0)),
        (Relation.AtLeast, Relation.AtLeast) or (Relation.AtMost, Relation.AtMost) or (Relation.Covers, Relation.Covers) =>
            FeatureComparison.Compare(ValueSelection.Of(demand.Value, null), demand.Relation, ValueSelection.Of(when.Value, null), allowance: 0) == Met.Yes,
        _ => false,
    };

    private static bool Exclude(Condition left, Condition right) => left.At.Feature == right.At.Feature && (left.Relation, right.Relation) switch
    {
        (Relation.Same or Relation.OneOf, Relation.Covers) => false,
        (Relation.Same or Relation.OneOf, _) => Values(left).All(value => FeatureComparison.Compare(value, right.Relation, ValueSelection.Of(right.Value, null), allowance: 0) == Met.No),
        (_, Relation.Same or Relation.OneOf) => Exclude(right, left),
        (Relation.AtLeast, Relation.AtMost) => FeatureComparison.Compare(ValueSelection.Of(left.Value, null), Relation.AtMost, ValueSelection.Of(right.Value, null), allowance: 0) == Met.No,
        (Relation.AtMost, Relation.AtLeast) => Exclude(right, left),
        _ => false,
    };

    /// <summary>Each single value a "same" or "one of" condition accepts.</summary>
    private static IEnumerable<KnownValue> Values(Condition condition) => condition.Value is ChoicesReading several && condition.Relation == Relation.OneOf
        ? several.Choices.Select(choice => ValueSelection.Of(new ChoiceReading(choice), null))
        : [ValueSelection.Of(condition.Value, null)];

    private static bool Equal(Condition left, Condition right) =>
        left.At == right.At && left.Relation == right.Relation && left.Value.Text == right.Value.Text;

    private static bool IsLeaveOff(Condition condition) => condition.At.Feature == Feature.Present.Code && condition.Value.Text == "no";

    private string Held(string position) => _neighbours.AsItStands(position) switch
    {
        PartThere there => FitWording.List(there.Parts.Select(part => part.Id)),
        NothingThere => "nothing",
        _ => "not recorded",
    };

    private string InWords(Condition condition)
    {
        if (condition.At.Feature == Feature.Present.Code)
        {
            return IsLeaveOff(condition) ? "nothing fitted" : "a part fitted";
        }

        var kind = _facts.FindPosition(condition.At.Position) is { } position ? _facts.FindKind(position.Kind) : null;
        var name = kind?.FindFeature(condition.At.Feature)?.Name ?? condition.At.Feature;
        var value = FitWording.InWords(condition.Value.Text.Replace("|", " or ", StringComparison.Ordinal));
        return condition.Relation is Relation.Same or Relation.OneOf ? $"{name} {value}" : $"{name} {FitWording.Of(condition.Relation)} {value}";
    }

    private static Reason Conflict(Companion rule, string text) => new("", ReasonBy.Companion, Axis.Mounts, Met.No, text)
    {
        Code = rule.Code,
        Feature = rule.Then.At.Feature,
        Relation = rule.Then.Relation,
        Effect = Effect.Stops,
        Grade = ValueSelection.GradeOf(rule.Evidence),
    };
}
