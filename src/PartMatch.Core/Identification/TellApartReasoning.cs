using System.Globalization;
using System.Numerics;

namespace PartMatch.Core.Identification;

/// <summary>From candidates and their checks to the answer, the same for parts and for variants.</summary>
internal static class TellApartReasoning
{
    /// <param name="relation">
    /// Why two candidates, by their places in the list, need not be told apart, and how far; null where nothing of the kind is recorded.
    /// </param>
    public static TellApartOutcome Decide(IdentificationSubject subject, TellApartAsked asked, TellApartTerms terms, Func<int, int, string?> relation)
    {
        var seen = new List<SeenObservation>();
        foreach (var text in terms.Seen)
        {
            var (understood, refused) = SeenReading.Read(text, subject);
            if (understood is null)
            {
                return refused ?? throw new InvalidOperationException("What was seen is either understood or refused.");
            }

            seen.Add(understood);
        }

        return new TellApartDecided(Answer(subject, asked, terms, seen, relation));
    }

    private static TellApartAnswer Answer(
        IdentificationSubject subject, TellApartAsked asked, TellApartTerms terms, List<SeenObservation> seen, Func<int, int, string?> relation)
    {
        var possible = seen.Aggregate(IdentificationKey.All(subject.Candidates.Count), (left, observation) => left & observation.Leaves);
        Observable[] allowed = [.. subject.Observables.Where(one => terms.Allow(one))];
        Observable[] splitting = [.. allowed.Where(one => one.AsTest().AnswersAmong(possible).Count > 1)];
        KeyTest[] tests = [.. splitting.Select(one => one.AsTest())];
        var method = IdentificationKey.MethodFor(BitOperations.PopCount(possible));
        var key = IdentificationKey.Find([.. subject.Candidates.Select(candidate => candidate.Weight)], tests, possible, method);
        var pairs = PairsOf(possible);
        var inseparable = InseparablePairs.Of(subject, allowed, pairs, relation);
        var headline = Headline(possible, pairs.Count, inseparable.Count, seen.Count > 0);
        var message = terms.Mode == CheckMode.BeforePaying && headline != TellApartHeadline.Identified
            ? SellerLetter.Write(subject, splitting, pairs)
            : null;
        return new TellApartAnswer(
            asked, headline, TellApartWording.Of(headline, subject, possible, inseparable, message, key), Rows(subject, possible, seen), subject.WeightsText, method,
            Minutes(key.ExpectedCost), Minutes(key.WorstCost), KeyDrawing.Of(subject, splitting, key), inseparable, message,
            Confirmations.Of(subject, splitting, possible), SeenPositions.Of(subject, seen), WalkRound.Of(subject, allowed));
    }

    /// <summary>Every two of a set, by their places.</summary>
    internal static IReadOnlyList<(int One, int Other)> PairsOf(ulong candidates)
    {
        int[] members = [.. IdentificationKey.Members(candidates)];
        return [.. members.SelectMany((one, index) => members[(index + 1)..], (one, other) => (one, other))];
    }

    internal static decimal Minutes(double minutes) => Math.Round((decimal)minutes, 2, MidpointRounding.ToEven);

    private static TellApartHeadline Headline(ulong possible, int pairs, int inseparable, bool anythingSeen) => (possible, pairs, inseparable) switch
    {
        (0, _, _) => TellApartHeadline.NoneLeft,
        (_, 0, _) => anythingSeen ? TellApartHeadline.Identified : TellApartHeadline.ToldApart,
        (_, _, 0) => TellApartHeadline.ToldApart,
        _ when inseparable == pairs => TellApartHeadline.NotToldApart,
        _ => TellApartHeadline.Partly,
    };

    private static CandidateRow[] Rows(IdentificationSubject subject, ulong possible, List<SeenObservation> seen)
    {
        var total = subject.Candidates.Sum(candidate => candidate.Weight);
        return
        [
            .. subject.Candidates.Select((candidate, index) => new CandidateRow(
                candidate.Code, candidate.Part?.Number, candidate.Name, Math.Round((decimal)(candidate.Weight / total), 4),
                (possible >> index & 1) == 1 ? CandidateState.Possible : CandidateState.RuledOut,
                [.. seen.Where(observation => (observation.Leaves >> index & 1) == 0).Select(observation => observation.Text)])),
        ];
    }
}

/// <summary>The key as the answer shows it.</summary>
internal static class KeyDrawing
{
    /// <returns>Null where the key makes no test.</returns>
    public static KeyStep? Of(IdentificationSubject subject, Observable[] tests, KeyNode node)
    {
        if (node.Test is not { } test)
        {
            return null;
        }

        var observable = tests[test];
        var answers = observable.AnswersAmong(node.Candidates).ToLookup(answer => answer.Candidates);
        return new KeyStep(
            subject.CodesOf(node.Candidates), observable.Shown(), TellApartReasoning.Minutes(node.ExpectedCost),
            [.. node.Branches.Select(branch => Answer(subject, tests, [.. answers[branch.Next.Candidates]], branch))]);
    }

    // Several answers leave the same candidates where one of those can be either: each of them leads on.
    private static StepAnswer Answer(IdentificationSubject subject, Observable[] tests, ObservableAnswer[] answers, KeyBranch branch) => new(
        string.Join(" or ", answers.Select(answer => answer.Text)), answers[0].Seen, subject.CodesOf(branch.Next.Candidates),
        Math.Round((decimal)branch.Share, 4), Of(subject, tests, branch.Next));
}

/// <summary>What a key says in words.</summary>
internal static class TellApartWording
{
    public static string Of(TellApartHeadline headline, IdentificationSubject subject, ulong possible, IReadOnlyList<Inseparable> inseparable, SellerMessage? message, KeyNode key)
    {
        var count = BitOperations.PopCount(possible);
        return headline switch
        {
            TellApartHeadline.Identified => $"By what was seen it is {subject.NamesOf(possible)}, if it is one of these.",
            TellApartHeadline.NoneLeft => "What was seen fits none of these: it is something else, a part of another is in it, or something was misread.",
            TellApartHeadline.NotToldApart when inseparable.All(pair => pair.IsLinked) =>
                $"Nothing at hand separates {(count == 2 ? "the two: one replaces the other" : "any two of them: each replaces another")}, within the limits that are said below.",
            TellApartHeadline.NotToldApart => $"Nothing at hand separates {(count == 2 ? "the two" : "any two of them")}.",
            TellApartHeadline.Partly => $"Some are told apart{Effort(message, key)}. Not all: see what is not separated.",
            _ when count < 2 && subject.Candidates[0].Part is null => "No family describes it here, so there is nothing to compare it with: look at the numbers near it.",
            _ when count < 2 => "Nothing recorded can be taken for it with more than low danger.",
            _ => $"{(count == 2 ? "The two are" : $"All {count} are")} told apart{Effort(message, key)}.{Doubt(subject)}",
        };
    }

    private static string Doubt(IdentificationSubject subject) =>
        subject.Candidates[0].Part is null ? " One swapped part deceives a single check: go round the engine as well." : "";

    private static string Effort(SellerMessage? message, KeyNode key) => message switch
    {
        { Questions: [var only] } => $" by one question to the seller: {only.Name}",
        { Questions.Count: var several } => string.Create(CultureInfo.InvariantCulture, $" by {several} questions to the seller"),
        _ when key.ExpectedCost == key.WorstCost => $" in {InWords(key.WorstCost)} min",
        _ => $" in {InWords(key.ExpectedCost)} min on average, {InWords(key.WorstCost)} at most",
    };

    private static string InWords(double minutes) => TellApartReasoning.Minutes(minutes).ToString("0.#", CultureInfo.InvariantCulture);
}
