
namespace PartMatch.Core.Identification;

/// <summary>What must come out, check after check, if it is the first of the candidates left.</summary>
internal static class Confirmations
{
    /// <returns>Empty where only one is left, or no check helps.</returns>
    public static IReadOnlyList<Confirmation> Of(IdentificationSubject subject, Observable[] splitting, ulong possible)
    {
        int[] members = [.. IdentificationKey.Members(possible)];
        if (members.Length < 2)
        {
            return [];
        }

        var one = members[0];
        KeyTest[] tests = [.. splitting.Select(observable => observable.AsTest())];
        int[] chosen = [.. LeastTests.Separating(tests, [.. members[1..].Select(other => (one, other))])];
        var total = members.Sum(member => subject.Candidates[member].Weight);
        int[][] rulesOut = [.. chosen.Select(test => members[1..].Where(other => tests[test].Separates(one, other)).ToArray())];
        var order = ProofOrder.Of([.. chosen.Select((test, index) => (tests[test].Cost, rulesOut[index].Sum(other => subject.Candidates[other].Weight) / total))]);
        return
        [
            .. order.Select(index => new Confirmation(
                splitting[chosen[index]].Shown(), splitting[chosen[index]].Answers.First(answer => (answer.Candidates >> one & 1) == 1).Text,
                [.. rulesOut[index].Select(other => subject.Candidates[other].Code)])),
        ];
    }
}

/// <summary>What was seen at which position of an engine, and of which variants it is so.</summary>
internal static class SeenPositions
{
    public static IReadOnlyList<SeenPosition> Of(IdentificationSubject subject, List<SeenObservation> seen)
    {
        SeenObservation[] placed = [.. seen.Where(observation => observation.Observable.Position is not null)];
        var likeliest = Likeliest(placed, subject.Candidates.Count);
        return [.. placed.Select(observation => Describe(subject, observation, likeliest))];
    }

    // The variants that most of what was seen speaks for.
    private static ulong Likeliest(SeenObservation[] placed, int candidates)
    {
        int[] agreeing = [.. Enumerable.Range(0, candidates).Select(candidate => placed.Count(observation => (observation.Leaves >> candidate & 1) == 1))];
        return agreeing.Select((count, candidate) => count == agreeing.Max() ? 1UL << candidate : 0).Aggregate(0UL, (left, bit) => left | bit);
    }

    private static SeenPosition Describe(IdentificationSubject subject, SeenObservation observation, ulong likeliest)
    {
        var foreign = (observation.Leaves & likeliest) == 0;
        var position = observation.Observable.Position?.Code ?? "";
        var text = observation.Leaves == 0 ? $"{observation.Text}: as on none of these."
            : foreign ? $"{observation.Text}: as on {subject.NamesOf(observation.Leaves)}, while the rest speaks for {subject.NamesOf(likeliest)}."
            : $"{observation.Text}: as on {subject.NamesOf(observation.Leaves)}.";
        return new SeenPosition(position, subject.CodesOf(observation.Leaves), foreign, text);
    }
}
