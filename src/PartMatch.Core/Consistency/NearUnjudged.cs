using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Consistency;

/// <summary>Near numbers that are dangerously easy to mix up and of which nobody has said what they are to each other.</summary>
internal static class NearUnjudged
{
    public static IEnumerable<Fault> Find(FamilyFacts facts, LookAlikeFacts lookAlikes)
    {
        var places = new FittedPlaces(facts);
        return new[] { DangerLevel.High, DangerLevel.Medium }
            .Select(danger => new PairQuestion(facts.Family.Code, Danger: danger, Judgement: PartRelation.NotJudged, Limit: int.MaxValue))
            .SelectMany(question => PairRanking.Decide(lookAlikes, question).Pairs)
            .Where(pair => pair.Near is not null)
            .Select(pair => Fault(facts, places, pair));
    }

    private static Fault Fault(FamilyFacts facts, FittedPlaces places, PairRow pair)
    {
        var worst = pair.Worst is { } place && place.Family == facts.Family.Code ? place : null;
        return new Fault(
            FaultSort.NearUnjudged,
            $"{pair.A.Number} and {pair.B.Number} are easily mixed up, danger {Codes.Of(pair.Danger)}, and nobody has judged the pair",
            $"{pair.DangerText} {pair.TellApartText}", worst?.Position, places.VariantsOf(pair.A.Part, pair.B.Part),
            [.. new[] { pair.A.Part, pair.B.Part }.Select(facts.FindPart).OfType<Part>().Select(new FaultRows(facts).Of)],
            worst is null ? null : QuestionAbout(worst),
            "Tell the two apart, then record in pairs what you found: a trap, harmless, or the same part, with the evidence.");
    }

    private static string QuestionAbout(WorstPlace worst) => new Permalink("/api/fit")
        .With("family", worst.Family).With("variant", worst.Variant).With("position", worst.Position).With("part", worst.Part ?? Part.None)
        .With("built", worst.Built).With("serial", worst.Serial).ToString();
}
