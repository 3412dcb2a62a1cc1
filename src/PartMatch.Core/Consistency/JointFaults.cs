using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Joints that what the maker fitted breaks with what the maker fitted beside it.</summary>
internal static class JointFaults
{
    private sealed record Unmated(string Variant, Part Left, Part Right, Reason Reason, string Fit);

    public static IEnumerable<Fault> Find(FamilyFacts facts) => facts.Joints.Where(joint => joint.Evidence?.IsRetracted != true)
        .SelectMany(joint => facts.Variants.Where(variant => joint.HoldsFor(variant.Code))
            .Select(variant => OnVariant(facts, variant, joint)).Where(unmated => unmated.Count > 0)
            .GroupBy(unmated => string.Join('\n', unmated.Select(pair => $"{pair.Left.Id} {pair.Right.Id}")), StringComparer.Ordinal)
            .Select(group => Fault(facts, joint, [.. group])));

    /// <summary>
    /// Pairs that do not mate, of a part that mates with nothing that may be there on some stretch of engines. Alternatives of which one mates are
    /// no fault.
    /// </summary>
    private static IReadOnlyList<Unmated> OnVariant(FamilyFacts facts, Variant variant, Joint joint)
    {
        var built = new AsBuilt(facts, variant, joint.Left.Position, joint.Right.Position);
        var found = new List<Unmated>();
        foreach (var stretch in built.Stretches)
        {
            var itself = joint.Left.Position == joint.Right.Position;
            (Part Left, Part Right)[] pairs =
            [
                .. built.PartsAt(joint.Left.Position, stretch)
                    .SelectMany(left => itself ? [left] : built.PartsAt(joint.Right.Position, stretch), (left, right) => (left, right)),
            ];
            Unmated[] judged =
            [
                .. pairs.Select(pair => new Unmated(
                    variant.Code, pair.Left, pair.Right, Judge(facts, variant, joint, stretch, pair.Left, pair.Right),
                    built.Question(joint.Left.Position, pair.Left.Id, stretch))),
            ];
            found.AddRange(judged.Where(pair => pair.Reason.Met == Met.No
                && (judged.Where(other => other.Left == pair.Left).All(other => other.Reason.Met == Met.No)
                    || judged.Where(other => other.Right == pair.Right).All(other => other.Reason.Met == Met.No))));
        }

        return [.. found.DistinctBy(pair => (pair.Left.Id, pair.Right.Id))];
    }

    private static Reason Judge(FamilyFacts facts, Variant variant, Joint joint, EngineSpan stretch, Part left, Part right)
    {
        var beside = new Dictionary<string, Part?>(StringComparer.Ordinal) { [joint.Right.Position] = right };
        var question = new FitQuestion(variant.Code, joint.Left.Position, left, With: beside);
        return JointReasons.Judge(facts, question, left, new Neighbours(facts, question, stretch)).First(reason => reason.Code == joint.Code);
    }

    private static Fault Fault(FamilyFacts facts, Joint joint, IReadOnlyList<IReadOnlyList<Unmated>> byVariant)
    {
        var (rows, pairs) = (new FaultRows(facts), byVariant[0]);
        var left = $"{FaultWords.PlaceName(facts, joint.Left.Position)} {FitWording.List(pairs.Select(pair => pair.Left.Number).Distinct())}";
        var right = $"{FaultWords.PlaceName(facts, joint.Right.Position)} {FitWording.List(pairs.Select(pair => pair.Right.Number).Distinct())}";
        string[] variants = [.. byVariant.Select(unmated => unmated[0].Variant)];
        return new Fault(
            FaultSort.JointContradicts,
            $"{left} and {right} do not mate, yet the maker fitted both",
            $"Joint {joint.Code}. {string.Join(" ", pairs.Select(pair => FitWording.AsSentence(pair.Reason.Text)))}",
            joint.Left.Position, variants,
            [
                rows.Of(joint),
                .. pairs.SelectMany(pair => rows.Of(pair.Left, joint.Left.Feature)),
                .. pairs.SelectMany(pair => rows.Of(pair.Right, joint.Right.Feature)),
                .. variants.SelectMany(variant => pairs.SelectMany(pair =>
                    rows.Fitting(variant, joint.Left.Position, pair.Left.Id).Concat(rows.Fitting(variant, joint.Right.Position, pair.Right.Id)))),
            ],
            pairs[0].Fit,
            "One of the two values, the joint or a fitment is wrong: look at the sources again, or measure both parts, and correct the row.")
        {
            Consequence = joint.Consequence,
        }.WithoutRepeatedRows();
    }
}
