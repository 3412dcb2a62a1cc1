using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Orders;

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
    /// Lines of which something is told though the orders and the plan say that it is not here, not looked at or not worked, each with what they say. Where no
    /// plan has that part there, or there is no plan, the orders alone speak.
    /// </summary>
    /// <param name="orders">Of the build.</param>
    /// <param name="list">What is in the build as it is planned; null where that is not known.</param>
    /// <returns>Index of the line in the sitting, in order.</returns>
    public static IReadOnlyList<(int Line, IReadOnlyList<string> NotYet)> Doubtful(IReadOnlyList<Order> orders, PartsList? list, Sitting sitting) =>
    [
        .. sitting.Lines.Index().Where(line => line.Item is { IsTold: true, Stands: false })
            .Select(line => (line.Index, Planned(list, line.Item)?.NotYet ?? NotHere(orders, line.Item)))
            .Where(line => line.Item2.Count > 0),
    ];

    private static ListedPart? Planned(PartsList? list, SittingLine told) =>
        list?.Parts.FirstOrDefault(part => part.Position == told.Position && part.Mounts is not null && part.OneOf.Contains(told.Part));

    /// <summary>Pieces of that part that were ordered for there, or for no place in particular, and of which none was looked at and right.</summary>
    private static IReadOnlyList<string> NotHere(IReadOnlyList<Order> orders, SittingLine told)
    {
        if (PartId.FindKey(told.Part) is not { } key)
        {
            return []; // no part
        }

        var bought = orders.SelectMany(order => order.Lines, (order, line) => (order.Number, Line: line))
            .Where(one => PartId.FindKey(one.Line.Agreed.Part) == key
                && (one.Line.Agreed.For.Count == 0 || one.Line.Agreed.For.Contains(told.Position))).ToList();
        return bought.Exists(one => one.Line.Pieces.Checked > 0) ? [] :
        [
            .. bought.SelectMany(one => new[] { (State: LineState.Ordered, one.Line.Pieces.OnTheWay), (State: LineState.Arrived, one.Line.Pieces.Arrived) }
                .Where(where => where.Item2 > 0).Select(where => PartsLists.SayNotYet(where.State, one.Number, one.Line.Line))),
        ];
    }

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
