using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>What several sorts of fault say in the same words.</summary>
internal static class FaultWords
{
    public static string PlaceName(FamilyFacts facts, string position) => facts.FindPosition(position)?.Name ?? position;

    public static string FeatureName(FamilyFacts facts, string position, string feature) =>
        FeatureName(facts.FindPosition(position) is { } at ? facts.FindKind(at.Kind) : null, feature);

    public static string FeatureName(Kind? kind, string feature) => kind?.FindFeature(feature)?.Name ?? feature;

    /// <summary>"at least 9 mm", "k2 or k2 long".</summary>
    public static string Condition(Relation relation, Reading value) => FitWording.Wanted(relation, ValueSelection.Of(value, null));

    /// <summary>Grade, source and date of a piece of evidence, its code first.</summary>
    public static string Source(Evidence? evidence)
    {
        if (evidence is null)
        {
            return "no evidence";
        }

        var about = new[] { Grade(evidence.Grade), evidence.Source, evidence.Date }.OfType<string>();
        return $"{evidence.Code}: {string.Join(", ", about)}{(evidence.IsRetracted ? $"; retracted {evidence.RetractedOn}" : "")}";
    }

    /// <summary>The bounds of a span, after a comma; empty where it has none.</summary>
    public static string Limits(Span span)
    {
        string[] limits =
        [
            .. Range("built", span.BuiltFrom?.Text, span.BuiltTo?.Text),
            .. Range("serial", span.SerialFrom is null ? null : Number(span.SerialFrom), span.SerialTo is null ? null : Number(span.SerialTo)),
        ];
        return limits.Length == 0 ? "" : $", {string.Join(", ", limits)}";
    }

    public static string Number(long? serial) => serial?.ToString(CultureInfo.InvariantCulture) ?? "";

    public static string Minutes(decimal minutes) => $"{minutes.ToString("0.##", CultureInfo.InvariantCulture)} min";

    /// <summary>"1 question", "3 questions".</summary>
    public static string Count(int many, string one, string several) => $"{many.ToString(CultureInfo.InvariantCulture)} {(many == 1 ? one : several)}";

    /// <summary>A sentence on how many questions hang on a thing.</summary>
    public static string Hangs(Unlocks unlocks)
    {
        const string Among = "between the variants of this family";
        var alone = $"{Count(unlocks.Alone, "question", "questions")} {Among} {(unlocks.Alone == 1 ? "hangs" : "hang")} on it alone";
        return unlocks switch
        {
            (0, 0) => $"No question {Among} hangs on it as things stand; a part from outside may.",
            (0, _) => $"It is one of several things that hold open {Count(unlocks.Together, "question", "questions")} {Among}.",
            (_, 0) => $"{alone}.",
            _ => $"{alone}; in {unlocks.Together} more it is one of several things that are open.",
        };
    }

    private static string Grade(EvidenceGrade grade) => grade == EvidenceGrade.MakersDocument ? "maker's document" : FitWording.InWords(Codes.Of(grade));

    private static IEnumerable<string> Range(string what, string? from, string? to) => (from, to) switch
    {
        (null, null) => [],
        ({ } low, null) => [$"{what} from {low}"],
        (null, { } high) => [$"{what} to {high}"],
        ({ } low, { } high) => [$"{what} {low} to {high}"],
    };
}
