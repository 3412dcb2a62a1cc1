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
    private readonly Companion[] _rules;
    private readonly List<Demand> _demands = [];

    private CompanionClosure(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours)
    {
        (_facts, _question, _part, _neighbours) = (facts, question, part, neighbours);
        _rules = [.. facts.Companions.Where(rule => rule.HoldsFor(question.Variant) && rule.Evidence?.IsRetracted != true)];
        Close();
    }

    /// <summary>Changes that must, and that perhaps must, be made elsewhere; and what the rules say against the part itself.</summary>
    internal sealed record Outcome(IReadOnlyList<CompanionChange> AlsoNeeded, IReadOnlyList<CompanionChange> PerhapsNeeded, IReadOnlyList<Reason> Reasons);

    /// <summary>Works out the closure and tells the neighbours what they will be once it is done.</summary>
    public static Outcome Work(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours)
    {
        var closure = new CompanionClosure(facts, question, part, neighbours);
        var also = closure.Changes(certain: true);
        var perhaps = closure.Changes(certain: false);
        var reasons = closure.AgainstThePart().Concat(closure.Conflicts()).ToList();
        foreach (var change in also)
        {
            neighbours.Change(
                change.Position, [.. change.Parts.Select(facts.FindPart).OfType<Part>()], leftOff: closure.On(change.Position, certain: true).Any(demand => IsLeaveOff(demand.Asks)));
        }

        return new Outcome(also, perhaps, reasons);
    }

    private void Close()
    {
        // Neighbours as they stand may ask something of the part; the part may ask something of its neighbours.
        foreach (var rule in _rules.Where(rule => rule.When.At.Position == _question.Position || rule.Then.At.Position == _question.Position))
        {
            Ask(rule, HoldsAt(rule.When), []);
        }

        for (var next = 0; next < _demands.Count; next++)
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

    private IEnumerable<Demand> On(string position, bool certain) => _demands.Where(demand => demand.Position == position && demand.Certain == certain);

    private List<CompanionChange> Changes(bool certain) =>
    [
        .. _demands.Where(demand => demand.Certain == certain && demand.Position != _question.Position)
            .Select(demand => demand.Position).Distinct()
            .Select(position => Change(position, certain)).OfType<CompanionChange>(),
    ];

    /// <summary>Null when what sits there already meets every demand; a held part whose value is not recorded makes the change a perhaps.</summary>
    private CompanionChange? Change(string position, bool certain)
    {
        var open = On(position, certain: true).Where(demand => HoldsAt(demand.Asks) == Met.No).ToList();
        if (!certain)
        {
            if (open.Count > 0)
            {
                return null;
            }

            open = [.. _demands.Where(demand => demand.Position == position && HoldsAt(demand.Asks) != Met.Yes)];
        }
        else
        {
            // Once it is changed at all, the new part has to meet every demand on the position, also those not known of the old one.
            open = open.Count == 0 ? [] : [.. On(position, certain: true).Where(demand => HoldsAt(demand.Asks) != Met.Yes)];
        }

        if (open.Count == 0)
        {
            return null;
        }

        var name = _facts.FindPosition(position)?.Name ?? position;
        var demanded = string.Join(" and ", open.Select(demand => InWords(demand.Asks)).Distinct());
        string[] parts = open.Exists(demand => IsLeaveOff(demand.Asks)) ? [] : [.. Candidates(position).Select(candidate => candidate.Id)];
        var known = open.Exists(demand => IsLeaveOff(demand.Asks)) ? "leave it off" : parts.Length == 0 ? "no known part meets this" : FitWording.List(parts.Take(6));
        var held = Held(position);
        return new CompanionChange(
            position, demanded, [.. open.SelectMany(demand => demand.Because).Select(rule => rule.Code).Distinct(StringComparer.Ordinal)], held, parts,
            $"{name} must have {demanded}; now there: {held}. {known}.");
    }

    private IEnumerable<Part> Candidates(string position) =>
        _facts.FindPosition(position) is { } at
            ? _facts.PartsOfKind(at.Kind).Where(part => On(position, certain: true).All(demand => Holds(part, demand.Asks) == Met.Yes))
            : [];

    /// <summary>
    /// What rules of neighbours, as they stand, ask of the part itself. What an unmet demand on a feature means is declared by the kind's rules
    /// for that feature; where it has none, or where the rule only perhaps holds, the reason is shown and moves neither axis.
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
            var text = $"Because {cause} has {InWords(rule.When)}, this position must have {InWords(demand.Asks)}; this part: {FitWording.Text(has)}.";
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
                    Effect = meaning?.Effect,
                    Work = meaning?.Work,
                    Consequence = meaning?.Consequence,
                    Part = FitWording.Shown(has, part: _part.Id),
                    Need = FitWording.Shown(ValueSelection.Of(demand.Asks.Value, null), "companion"),
                    Grade = DemandReasons.Weakest(has),
                    Mend = metHere == Met.No ? $"change {cause} as well" : null,
                    Evidence = DemandReasons.EvidenceOf([has], rule.Evidence),
                };
            }
        }
    }

    /// <summary>Two certain demands on one position that no part can meet together.</summary>
    private IEnumerable<Reason> Conflicts()
    {
        var certain = _demands.Where(demand => demand.Certain && demand.Position != _question.Position).ToList();
        foreach (var (index, left) in certain.Index())
        {
            foreach (var right in certain.Skip(index + 1).Where(right => right.Position == left.Position && Exclude(left.Asks, right.Asks)))
            {
                var name = _facts.FindPosition(left.Position)?.Name ?? left.Position;
                yield return Conflict(right.Because[^1], $"{name} would have to have {InWords(left.Asks)} and also {InWords(right.Asks)}: the rules {left.Because[^1].Code} and {right.Because[^1].Code} exclude each other here.") with
                {
                    Evidence = DemandReasons.EvidenceOf([], right.Because[^1].Evidence),
                };
            }
        }
    }

    private Met HoldsAt(Condition condition)
    {
        if (condition.At.Position == _question.Position)
        {
            return Holds(_part, condition);
        }

        return _neighbours.At(condition.At.Position) switch
        {
            PartThere there => there.Parts.Select(part => Holds(part, condition)).MinBy(met => met switch { Met.Yes => 0, Met.NotKnown => 1, _ => 2 }),
            NothingThere => condition.At.Feature == Feature.Present.Code ? Holds(ValueSelection.PresentAs("no"), condition) : Met.No,
            _ => Met.NotKnown,
        };
    }

    private static Met Holds(Part part, Condition condition) => Holds(ValueSelection.Of(part, condition.At.Feature), condition);

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

    private string Held(string position) => _neighbours.At(position) switch
    {
        PartThere there => FitWording.List(there.Parts.Select(part => part.Id)),
        NothingThere => "nothing",
        _ => "not recorded",
    };

    private string InWords(Condition condition)
    {
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
