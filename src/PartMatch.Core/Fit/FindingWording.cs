using System.Globalization;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>A finding in the words of the bench: what was found, on what, who says so and when, and how it stands to the question.</summary>
internal static class FindingWording
{
    public static string Text(FamilyFacts facts, FitQuestion question, FindingShown found, IReadOnlyList<(Axis Axis, string Position)> others)
    {
        var finding = found.Finding;
        string[] sentences =
        [
            $"{Of(finding.Evidence.Grade)} on {finding.Variant}{Span(finding.Span)}{With(facts, finding)}: {Outcome(finding)}",
            $"Says {Who(finding.Evidence)}",
            finding.Note ?? "",
            Standing(facts, question, found, others),
        ];
        return string.Join(' ', sentences.Where(sentence => sentence.Length > 0).Select(sentence => $"{FitWording.AsSentence(sentence).TrimEnd('.')}."));
    }

    private static string Of(EvidenceGrade grade) => grade switch
    {
        EvidenceGrade.RanUnderLoad => "Ran under load",
        EvidenceGrade.TrialFitted => "Trial-fitted",
        EvidenceGrade.Measured => "Measured",
        EvidenceGrade.MakersDocument => "Maker's document",
        EvidenceGrade.Reported => "Reported",
        _ => "Inferred",
    };

    private static string Outcome(Finding finding) => (finding.Outcome, finding.Part == Part.None) switch
    {
        (FindingOutcome.Yes, true) => "the position can stay empty",
        (FindingOutcome.WithWork, true) => "the position can stay empty, but only after work",
        (FindingOutcome.No, true) => "the position cannot stay empty",
        (FindingOutcome.Same, true) => "the engine runs the same without it",
        (FindingOutcome.Differently, true) => "the engine runs differently without it",
        (FindingOutcome.Yes, _) => "it goes on",
        (FindingOutcome.WithWork, _) => "it goes on, but only after work",
        (FindingOutcome.No, _) => "it does not go on",
        (FindingOutcome.Same, _) => "the engine runs the same with it",
        _ => "the engine runs differently with it",
    };

    private static string Span(Span span)
    {
        string[] bounds =
        [
            .. Range("serial", Text(span.SerialFrom), Text(span.SerialTo)),
            .. Range("built", span.BuiltFrom?.Text, span.BuiltTo?.Text),
        ];
        return bounds.Length == 0 ? "" : $" ({string.Join(", ", bounds)})";
    }

    private static IEnumerable<string> Range(string what, string? from, string? to) => (from, to) switch
    {
        (null, null) => [],
        (null, _) => [$"{what} up to {to}"],
        (_, null) => [$"{what} from {from}"],
        _ => [$"{what} {from} to {to}"],
    };

    private static string? Text(long? serial) => serial?.ToString(CultureInfo.InvariantCulture);

    private static string With(FamilyFacts facts, Finding finding)
    {
        var each = finding.With.OrderBy(with => with.Key, StringComparer.Ordinal).Select(with => $"{with.Value ?? "nothing"} as {Name(facts, with.Key)}");
        return finding.With.Count == 0 ? "" : $", with {string.Join(" and ", each)}";
    }

    private static string Name(FamilyFacts facts, string position) => facts.FindPosition(position)?.Name ?? position;

    /// <summary>What is recorded of the source; a source that nothing is recorded of is named by its code.</summary>
    private static string Who(Evidence evidence)
    {
        var details = evidence.Details;
        string?[] said =
        [
            evidence.Author, evidence.Date, evidence.Source, details?.Page, details?.Instrument,
            details?.Hours is { } hours ? FormattableString.Invariant($"{hours:0.######} h under load") : null,
            details?.Output?.Text, details?.Fuel is { } fuel ? $"on {fuel}" : null,
        ];
        return said.Any(word => !string.IsNullOrEmpty(word)) ? string.Join(", ", said.Where(word => !string.IsNullOrEmpty(word))) : evidence.Code;
    }

    private static string Standing(
        FamilyFacts facts, FitQuestion question, FindingShown found, IReadOnlyList<(Axis Axis, string Position)> others) => found.Standing switch
        {
            FindingStanding.Indirect when found.Variant != question.Variant =>
                $"counts one grade lower: {found.Variant} has the same part here as {question.Variant}",
            FindingStanding.Indirect => "counts one grade lower on engines outside that span",
            FindingStanding.Retracted =>
                $"not counted: withdrawn on {found.Evidence.RetractedOn}{(found.Evidence.RetractedWhy is { Length: > 0 } why ? $", {why}" : "")}",
            FindingStanding.Copy => $"not counted again: goes back to the same source as {found.CopyOf}",
            FindingStanding.OtherVariant =>
                $"not counted: {found.Variant} is not known to have the same part here as {question.Variant}",
            FindingStanding.OtherNeighbours when Unnamed(found, others) is { Length: > 0 } unnamed =>
                $"not counted: it does not say how that is with another {string.Join(" and ", unnamed.Select(at => Name(facts, at)))} than the maker's",
            FindingStanding.OtherNeighbours => "not counted: those are not known to be the neighbours that will be there",
            FindingStanding.SaysNothing when found.Grade == EvidenceGrade.TrialFitted => "not counted: a trial fit says nothing about how the engine runs",
            FindingStanding.SaysNothing => "not counted: its outcome is none of this axis",
            _ => "",
        };

    private static string[] Unnamed(FindingShown found, IReadOnlyList<(Axis Axis, string Position)> others) =>
        [.. others.Where(other => other.Axis == found.Axis && !found.Finding.With.ContainsKey(other.Position)).Select(other => other.Position).Distinct()];
}
