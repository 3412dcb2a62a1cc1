using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>
/// Findings that cannot all hold: equally good ones that exclude each other, and those that say another thing than better ones or than what is reckoned.
/// </summary>
internal static class FindingFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts)
    {
        var asked = facts.Findings.Where(finding => !finding.Evidence.IsRetracted)
            .Select(finding => (finding.Variant, finding.Position, finding.Part)).Distinct()
            .OrderBy(about => about.Variant, StringComparer.Ordinal).ThenBy(about => about.Position, StringComparer.Ordinal)
            .ThenBy(about => about.Part, StringComparer.Ordinal);
        foreach (var (variant, position, id) in asked)
        {
            var part = id == Part.None ? Part.Nothing(facts.FindPosition(position)?.Kind ?? "") : facts.FindPart(id);
            if (part is null || facts.FindVariant(variant) is null || facts.FindPosition(position) is null)
            {
                continue;
            }

            var answer = FitCheck.Decide(facts, new FitQuestion(variant, position, part));
            foreach (var axis in Enum.GetValues<Axis>())
            {
                if (Says(answer, axis) is { } says)
                {
                    yield return FaultOf(facts, answer, axis, part, variant, position, says);
                }
            }
        }
    }

    /// <summary>What disagrees on an axis, where a finding has a part in it; null where nothing does.</summary>
    private static string? Says(FitAnswer answer, Axis axis)
    {
        var counting = answer.Findings.Where(found => found.Axis == axis && found.Rank is not null).ToList();
        if (counting.Count == 0)
        {
            return null;
        }

        var isDisputed = axis == Axis.Mounts ? answer.Mounts.Disputed : answer.Runs.Disputed;
        var against = answer.Disagreements.Where(one => one.Axis == axis).Select(one => one.Text).Distinct(StringComparer.Ordinal).ToList();
        return isDisputed ? $"equally good statements exclude each other, so the axis is not known: {string.Join(" ", counting.Select(found => found.Text))}"
            : against.Count > 0 ? $"what decides is contradicted: {string.Join(" ", against)}"
            : null;
    }

    private static Fault FaultOf(FamilyFacts facts, FitAnswer answer, Axis axis, Part part, string variant, string position, string says)
    {
        var rows = new FaultRows(facts);
        var findings = facts.FindingsAt(position).Where(finding => finding.Part == part.Id && finding.Axis == axis && !finding.Evidence.IsRetracted);
        var what = axis == Axis.Mounts ? "whether it mounts" : "how the engine runs";
        return new Fault(
            FaultSort.FindingsDisagree, $"{FaultWords.PlaceName(facts, position)} on {variant}, {part.Number}: findings disagree on {what}",
            FitWording.AsSentence(says), position, [variant], [.. findings.Select(rows.Of)],
            new Permalink("/api/fit").With("family", facts.Family.Code).With("variant", variant).With("position", position).With("part", part.Id).ToString(),
            "Try it once more and record how it went; retract the finding that turns out to be wrong, or limit it to the engines it holds for.")
        {
            Consequence = answer.Consequence,
        };
    }
}
