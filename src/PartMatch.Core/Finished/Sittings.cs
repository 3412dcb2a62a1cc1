using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Finished;

/// <summary>From what a builder tells of a finished engine to findings: each with the neighbours it was tried with.</summary>
public static class Sittings
{
    /// <summary>How sure it makes: an engine that ran under load says most of how its parts run; one that was only put together says that they mount.</summary>
    public static EvidenceGrade GradeOf(Sitting sitting) =>
        sitting.Lines.Any(line => line.Runs is not null) ? EvidenceGrade.RanUnderLoad : EvidenceGrade.TrialFitted;

    /// <summary>What the evidence of a build's sittings says of where it is written down; by it they are found again.</summary>
    public static string SourceOf(string build, int version) => string.Create(CultureInfo.InvariantCulture, $"{Mark(build)}version {version}");

    /// <summary>Was it found on this build?</summary>
    public static bool IsOf(string build, Evidence evidence) => evidence.Source?.StartsWith(Mark(build), StringComparison.Ordinal) == true;

    /// <summary>In the order of the lines, mounts before runs.</summary>
    public static IReadOnlyList<SittingFinding> Findings(FamilyFacts family, Build build, Sitting sitting)
    {
        var variant = build.Target ?? build.Donor.Variant;
        var there = sitting.Lines.ToDictionary(line => line.Position, line => line.Part, StringComparer.Ordinal);
        return
        [
            .. sitting.Lines.Where(line => line.IsTold).SelectMany(line =>
            {
                var with = With(family, variant, line.Position, there);
                return new[] { (Axis.Mounts, line.Mounts), (Axis.Runs, line.Runs) }.Where(told => told.Item2 is not null)
                    .Select(told => new SittingFinding(line.Part, variant, line.Position, told.Item1, told.Item2 ?? default, with, line.Note));
            }),
        ];
    }

    /// <summary>
    /// Lines of which something is told though the orders and the plan say that it is not here, not looked at or not worked, each with what they say.
    /// </summary>
    /// <param name="list">What is in the build, as far as it is known.</param>
    /// <returns>Index of the line in the sitting, in order.</returns>
    public static IReadOnlyList<(int Line, IReadOnlyList<string> NotYet)> Doubtful(PartsList list, Sitting sitting) =>
    [
        .. sitting.Lines.Index().Where(line => line.Item is { IsTold: true, Stands: false })
            .Select(line => (line.Index, list.Parts
                .FirstOrDefault(part => part.Position == line.Item.Position && part.OneOf.Contains(line.Item.Part))?.NotYet ?? []))
            .Where(line => line.Item2.Count > 0),
    ];

    /// <summary>A finding counts among the neighbours it names; what is as built needs no word, and what cannot matter there has none.</summary>
    private static IReadOnlyList<string> With(FamilyFacts family, string variant, string position, Dictionary<string, string> there) =>
    [
        .. Neighbours.Reach(family, variant, position).Where(other => other != position && there.ContainsKey(other) && !IsAsBuilt(family, variant, other,
            there[other]))
            .Order(StringComparer.Ordinal).Select(other => $"{other}={there[other]}"),
    ];

    private static bool IsAsBuilt(FamilyFacts family, string variant, string position, string part) =>
        family.FitmentsAt(variant, position).Any(fitment => (fitment.Part ?? Part.None) == part);

    private static string Mark(string build) => $"build {build}, ";
}
