using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Judges a part in the sums it is a term of: a worst-case interval sum with every term shown.</summary>
internal static class StackReasons
{
    /// <summary>More combinations of alternatives than this are not tried out: the sum is then not known.</summary>
    private const int MostCombinations = 64;

    private sealed record Term(StackTerm Of, Part? Part, KnownValue Value);

    public static IEnumerable<Reason> Judge(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours)
    {
        (Stack Stack, Reason Reason)[] judged =
        [
            .. At(facts, question).Select(stack => (stack, Judge(facts, question, part, stack, neighbours))).Where(one => one.Item2 is not null)
                .Select(one => (one.stack, one.Item2!)), // filtered just before
        ];
        return judged.Select(one => SettingOf(facts, one, judged) is { } work ? DemandReasons.OnceDone(work, one.Reason) : one.Reason);
    }

    /// <summary>
    /// The work that sets a sum which alters how the engine runs, such as a valve lash: another sum of the same terms asks for it, and it changes one of them.
    /// Afterwards the sum lies in the band of the work, which is not wider.
    /// </summary>
    private static Work? SettingOf(FamilyFacts facts, (Stack Stack, Reason Reason) altering, IReadOnlyList<(Stack Stack, Reason Reason)> judged)
    {
        if (altering.Reason is not { Effect: Effect.Alters, Met: Met.No })
        {
            return null;
        }

        string[] terms =
        [
            .. altering.Stack.Terms.OfType<FeatureTerm>()
                .SelectMany(term => new[] { $"{term.At.Position}.{term.At.Feature}", $"{facts.FindPosition(term.At.Position)?.Kind}.{term.At.Feature}" }),
        ];
        return judged.Where(other => other.Reason is { Effect: Effect.Work, Met: Met.No, Work: not null }
                && IsSameSum(other.Stack, altering.Stack) && other.Stack.Band.LiesIn(altering.Stack.Band))
            .Select(other => facts.FindWork(other.Reason.Work!)) // filtered just before
            .FirstOrDefault(work => work?.Changes.Any(terms.Contains) == true);
    }

    /// <summary>The same terms in whatever order, each as often: a term that stands twice counts twice.</summary>
    private static bool IsSameSum(Stack one, Stack other) =>
        one.Terms.CountBy(term => term).ToHashSet().SetEquals(other.Terms.CountBy(term => term));

    /// <summary>Where another neighbour than the maker's is a term of a sum with this position, and on which axis that matters.</summary>
    public static IEnumerable<(Axis Axis, string Position)> OtherNeighbours(FamilyFacts facts, FitQuestion question, Neighbours neighbours) =>
        At(facts, question)
            .SelectMany(PositionsOf, (stack, position) => (stack.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, position))
            .Where(at => at.position != question.Position && neighbours.IsAnother(at.position));

    private static IEnumerable<Stack> At(FamilyFacts facts, FitQuestion question) =>
        facts.StacksAt(question.Position).Where(stack => stack.HoldsFor(question.Variant) && stack.Evidence?.IsRetracted != true);

    private static IEnumerable<string> PositionsOf(Stack stack) => stack.Terms.OfType<FeatureTerm>().Select(term => term.At.Position).Distinct();

    /// <summary>Null where a position of the stack is known to carry nothing: then the stack does not apply.</summary>
    private static Reason? Judge(FamilyFacts facts, FitQuestion question, Part part, Stack stack, Neighbours neighbours)
    {
        string[] positions = [.. PositionsOf(stack)];
        if (positions.Any(position => position != question.Position && neighbours.At(position) is NothingThere))
        {
            return null;
        }

        var combinations = new List<Dictionary<string, Part?>> { new(StringComparer.Ordinal) };
        foreach (var position in positions)
        {
            var candidates = Candidates(question, part, neighbours, position);
            combinations =
            [
                .. combinations.SelectMany(_ => candidates, (chosen, candidate) => With(chosen, position, candidate)),
            ];
            if (combinations.Count > MostCombinations)
            {
                var tooMany = $"{FitWording.InWords(stack.Code)}: too many combinations of neighbours to add up; name the neighbours in the question.";
                return Base(stack, Met.NotKnown, tooMany);
            }
        }

        // Of what is chosen by measurement the best counts, for each of the neighbours that may be there.
        string[] chosenLast = [.. positions.Where(position => neighbours.At(position) is PartThere { IsChosen: true })];
        Reason[] each =
        [
            .. combinations.GroupBy(chosen => string.Join('|', positions.Except(chosenLast).Select(position => chosen[position]?.Id)))
                .Select(group => Alternatives.Best([.. group.Select(chosen => Judge(facts, question, stack, chosen))])),
        ];
        return Alternatives.Weigh(each, isChosen: false, () => each.First(reason => reason.Met != Met.Yes) with
        {
            Met = Met.NotKnown,
            Mend = null,
            Text = $"{FitWording.InWords(stack.Code)}: adds up with some of the neighbours the maker fitted and not with all. "
                + string.Join(" ", each.Select(reason => reason.Text)),
        });
    }

    private static IReadOnlyList<Part?> Candidates(FitQuestion question, Part part, Neighbours neighbours, string position) =>
        position == question.Position ? [part] : neighbours.At(position) is PartThere there ? [.. there.Parts] : [null];

    private static Reason Judge(FamilyFacts facts, FitQuestion question, Stack stack, Dictionary<string, Part?> chosen)
    {
        Term[] terms = [.. stack.Terms.Select(term => Read(term, chosen))];
        var sum = Sum(terms);
        var met = sum is { } total ? FeatureComparison.InBand(total, stack.Band) : Met.NotKnown;
        var band = FitWording.Text(stack.Band, stack.Unit);
        var found = sum is { } value ? FitWording.Text(value, stack.Unit) : "not known";
        var added = string.Join(" ", terms.Select(term => InWords(facts, stack, term)));
        var text = $"{FitWording.InWords(stack.Code)}: {added} = {found}; wanted {band}.{FitWording.Notes([.. terms.Select(term => term.Value)])}";
        return Base(stack, met, text) with
        {
            Feature = Own(stack, question).Feature,
            At = Own(stack, question),
            Terms = [.. terms.Select(term => Shown(facts, stack, term, chosen[question.Position]))],
            Band = FitWording.Shown(stack.Band, stack.Unit),
            Difference = sum is { } shown ? FitWording.Shown(shown, stack.Unit) : null,
            Grade = DemandReasons.Weakest(stack.Evidence, [.. terms.Where(term => term.Of is FeatureTerm).Select(term => term.Value)]),
            Room = Room(stack, terms, chosen[question.Position]),
            Mend = met == Met.No ? MendOf(facts, question, stack, chosen) : null,
            Cited = DemandReasons.EvidenceOf(terms.Select(term => term.Value), stack.Evidence),
        };
    }

    /// <summary>Does the sum lie in its band with these parts?</summary>
    /// <param name="chosen">A part for each position of the stack.</param>
    public static Met AddsUp(Stack stack, IReadOnlyDictionary<string, Part> chosen)
    {
        var parts = chosen.ToDictionary(pair => pair.Key, Part? (pair) => pair.Value, StringComparer.Ordinal);
        return Sum(stack.Terms.Select(term => Read(term, parts))) is { } total ? FeatureComparison.InBand(total, stack.Band) : Met.NotKnown;
    }

    /// <param name="asked">The part asked about; null where nothing is to be there.</param>
    private static ComparedValue Shown(FamilyFacts facts, Stack stack, Term term, Part? asked)
    {
        var from = term.Part is null || term.Part.Id != asked?.Id ? "neighbour" : "part";
        return FitWording.Shown(term.Value, from, term.Part?.Id) with { Text = InWords(facts, stack, term) };
    }

    private static Dictionary<string, Part?> With(Dictionary<string, Part?> chosen, string position, Part? candidate) =>
        new(chosen, StringComparer.Ordinal) { [position] = candidate };

    private static FeatureAt Own(Stack stack, FitQuestion question) =>
        stack.Terms.OfType<FeatureTerm>().First(term => term.At.Position == question.Position).At;

    private static Term Read(StackTerm term, Dictionary<string, Part?> chosen) => term switch
    {
        FeatureTerm { At: var at } when chosen[at.Position] is { } part => new Term(term, part, ValueSelection.Of(part, at.Feature)),
        _ => new Term(term, null, NotRecorded.Instance),
    };

    private static Interval? Limits(Term term) => (term.Of, term.Value) switch
    {
        (ConstantTerm constant, _) => new Interval(constant.Value, constant.Value),
        (_, StatedQuantity quantity) => quantity.Possible,
        (_, StatedCount count) => new Interval(count.Value, count.Value),
        _ => null,
    };

    /// <summary>What the band leaves for a reading of the missing terms, or of the part's own where none is missing.</summary>
    private static decimal? Room(Stack stack, IReadOnlyList<Term> terms, Part? part)
    {
        var complete = terms.All(term => Limits(term) is not null);
        return stack.Band.Width - terms.Where(term => !complete || term.Part is null || term.Part.Id != part?.Id).Sum(term => Limits(term)?.Width ?? 0);
    }

    private static Interval? Sum(IEnumerable<Term> terms)
    {
        var sum = new Interval(0, 0);
        foreach (var term in terms)
        {
            if (Limits(term) is not { } known)
            {
                return null;
            }

            sum = term.Of.Sign < 0 ? sum - known : sum + known;
        }

        return sum;
    }

    private static string? MendOf(FamilyFacts facts, FitQuestion question, Stack stack, Dictionary<string, Part?> chosen)
    {
        var mends = new List<string>();
        foreach (var position in chosen.Keys.Where(position => position != question.Position))
        {
            if (facts.FindPosition(position) is not { } at)
            {
                continue;
            }

            string[] known =
            [
                .. facts.PartsOfKind(at.Kind)
                    .Where(candidate => Sum(stack.Terms.Select(term => Read(term, With(chosen, position, candidate)))) is { } sum
                        && FeatureComparison.InBand(sum, stack.Band) == Met.Yes)
                    .Select(candidate => candidate.Id),
            ];
            if (known.Length > 0)
            {
                mends.Add($"would add up at {at.Name}: {FitWording.Some(known)}");
            }
        }

        return mends.Count == 0 ? "no single known neighbour would mend it" : string.Join("; ", mends);
    }

    private static string InWords(FamilyFacts facts, Stack stack, Term term)
    {
        var sign = term.Of.Sign < 0 ? "−" : "+";
        return term.Of switch
        {
            ConstantTerm constant => $"{sign} {FitWording.Number(constant.Value, stack.Unit)}",
            FeatureTerm { At: var at } =>
                $"{sign} {FitWording.Text(term.Value)} ({facts.FindPosition(at.Position)?.Name ?? at.Position}, {FitWording.InWords(at.Feature)})",
            _ => sign,
        };
    }

    private static Reason Base(Stack stack, Met met, string text) =>
        new("", ReasonBy.Stack, stack.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, met, text)
        {
            Code = stack.Code,
            Effect = stack.Effect,
            Work = stack.Effect == Effect.Work ? stack.Work : null,
            Consequence = stack.Consequence,
        };
}
