using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>
/// What must also change: the least fixed point over (position, demand), so that loops end. A rule whose "when" holds asks for its "then";
/// a demand that implies another rule's "when" goes on.
/// </summary>
internal sealed class CompanionClosure
{
    private readonly FamilyFacts _facts;
    private readonly FitQuestion _question;
    private readonly Part _part;
    private readonly Neighbours _neighbours;
    private readonly bool _isAsBuilt;
    private readonly Companion[] _rules;
    private readonly List<CompanionDemand> _demands = [];

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
        return new Outcome(
            also, closure.PerhapsNeeded(also),
            [.. CompanionReasons.AgainstThePart(facts, question, part, closure._demands), .. CompanionReasons.Conflicts(facts, closure._demands)]);
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
            foreach (var rule in _rules.Where(rule => rule.When.At == demand.Asks.At && demand.Asks.Implies(rule.When)))
            {
                Ask(rule, demand.Certain ? Met.Yes : Met.NotKnown, demand.Because);
            }
        }
    }

    private void Ask(Companion rule, Met when, IReadOnlyList<Companion> because)
    {
        var certain = when == Met.Yes;
        if (when == Met.No || _demands.Exists(demand => demand.Asks.IsSameAs(rule.Then) && (demand.Certain || !certain)))
        {
            return;
        }

        _demands.Add(new CompanionDemand(rule.Then, [.. because, rule], certain));
    }

    private void Make(IEnumerable<CompanionChange> changes)
    {
        foreach (var change in changes)
        {
            if (CertainOn(change.Position).Any(demand => demand.Asks.IsLeaveOff()))
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
                .ThenBy(candidate => Unmet(candidate, reason => reason.Met == Met.No))
                .ThenBy(candidate => Unmet(candidate, reason => reason.Met == Met.NotKnown)).First(),
        };
        _neighbours.Change(position, best);
    }

    private IEnumerable<CompanionDemand> CertainOn(string position) => _demands.Where(demand => demand.Position == position && demand.Certain);

    private IReadOnlyList<string> Elsewhere => [.. _demands.Select(demand => demand.Position).Where(position => position != _question.Position).Distinct()];

    /// <summary>Positions where something is certainly demanded that what sits there is not known to meet.</summary>
    private List<CompanionChange> AlsoNeeded() =>
    [
        .. Elsewhere
            .Where(position => CertainOn(position).Any(demand => AsItStands(demand) is var met && (met == Met.No || (met == Met.NotKnown && !_isAsBuilt))))
            .Select(position => Change(position, [.. CertainOn(position)], certain: true)),
    ];

    private List<CompanionChange> PerhapsNeeded(List<CompanionChange> also) =>
    [
        .. Elsewhere.Except(also.Select(change => change.Position))
            .Where(position => _demands.Exists(demand => demand.Position == position && AsItStands(demand) != Met.Yes))
            .Select(position => Change(position, _demands.FindAll(demand => demand.Position == position), certain: false)),
    ];

    /// <param name="demands">Every demand that a part at the position has to meet.</param>
    private CompanionChange Change(string position, List<CompanionDemand> demands, bool certain)
    {
        var open = demands.FindAll(demand => AsItStands(demand) != Met.Yes);
        var name = _facts.FindPosition(position)?.Name ?? position;
        var demanded = string.Join(" and ", open.Select(demand => demand.Asks.InWords(_facts)).Distinct());
        var leftOff = open.Exists(demand => demand.Asks.IsLeaveOff());
        string[] parts = leftOff || _facts.FindPosition(position) is not { } at
            ? []
            : [.. _facts.PartsOfKind(at.Kind).Where(part => demands.TrueForAll(demand => demand.Asks.HoldsOf(part) == Met.Yes)).Select(part => part.Id)];
        var known = leftOff ? "Leave it off." : parts.Length == 0 ? "No known part meets this." : $"Known to meet it: {FitWording.Some(parts)}.";
        var held = Held(position);
        return new CompanionChange(
            position, demanded, [.. open.SelectMany(demand => demand.Because).Select(rule => rule.Code).Distinct(StringComparer.Ordinal)], held, parts,
            $"{name} {(certain ? "must have" : "may have to have")} {demanded}; now there: {held}. {known}");
    }

    private Met AsItStands(CompanionDemand demand) => HoldsAt(demand.Asks, _neighbours.AsItStands);

    private Met HoldsAt(Condition condition, Func<string, Neighbour> at)
    {
        if (condition.At.Position == _question.Position)
        {
            return condition.HoldsOf(_part);
        }

        return at(condition.At.Position) switch
        {
            PartThere there => there.Parts.Select(condition.HoldsOf).Distinct().ToArray() is [var met] ? met : Met.NotKnown,
            NothingThere => condition.At.Feature == Feature.Present.Code ? condition.HoldsOf(ValueSelection.PresentAs("no")) : Met.No,
            _ => Met.NotKnown,
        };
    }

    private string Held(string position) => _neighbours.AsItStands(position) switch
    {
        PartThere there => FitWording.List(there.Parts.Select(part => part.Id)),
        NothingThere => "nothing",
        _ => "not recorded",
    };
}
