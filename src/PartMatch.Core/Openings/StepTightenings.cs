using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Parts;
using PartMatch.Core.Tightening;

namespace PartMatch.Core.Openings;

/// <summary>How the fasteners of a plan are tightened, by what was recorded of the engines whose parts these are.</summary>
/// <param name="chosen">What is at every position.</param>
internal sealed class StepTightenings(BuildTerms terms, IReadOnlyDictionary<string, Candidate> chosen)
{
    private FamilyFacts Family => terms.Facts.Family;

    /// <summary>
    /// Of the engines that have this part there those count that share most of what it is screwed through and into: one number goes with another torque into
    /// another crankshaft. Where the part is of no engine, the one that it runs like counts, then the one that is built. The same words are told once.
    /// </summary>
    public IReadOnlyList<StepTightening> Of(string position, Candidate candidate)
    {
        var others = Neighbours(position);
        var have = Family.Variants.Select(variant => variant.Code).Where(variant => Has(variant, position, candidate))
            .Select(variant => (Variant: variant, Shared: others.Count(other => Has(variant, other, chosen[other]))));
        string[][] ranked =
        [
            .. have.GroupBy(one => one.Shared).OrderByDescending(group => group.Key)
                .Select(group => group.Select(one => one.Variant).OrderBy(Rank(candidate)).ToArray()),
            [candidate.Reference],
            [terms.Target],
        ];
        return ranked.Select(variants => variants.SelectMany(variant => Told(variant, position)).DistinctBy(Words).ToList())
            .FirstOrDefault(told => told.Count > 0) ?? [];
    }

    /// <summary>What it runs like first, then the engine that is built, then the donor.</summary>
    private Func<string, int> Rank(Candidate candidate)
    {
        string[] known = [candidate.Reference, terms.Target, terms.Build.Donor.Variant];
        return variant => Array.IndexOf(known, variant) is >= 0 and var index ? index : known.Length;
    }

    private bool Has(string variant, string position, Candidate candidate) => candidate is { IsNothing: false, Parts: [var part] }
        && Family.FitmentsAt(variant, position).Any(fitment => fitment.Part == part.Id);

    /// <summary>Positions that it is measured against, and what it goes into.</summary>
    private string[] Neighbours(string position) =>
    [
        .. Family.Joints.Select(joint => new[] { joint.Left.Position, joint.Right.Position })
            .Concat(Family.Stacks.Select(stack => stack.Terms.OfType<FeatureTerm>().Select(term => term.At.Position).ToArray()))
            .Concat(Family.BenchOrders.Where(row => row.How == BenchJoin.Into && row.Evidence?.IsRetracted != true).Select(row => new[] { row.First, row.Then }))
            .Where(joined => joined.Contains(position)).SelectMany(joined => joined)
            .Where(other => other != position && chosen.ContainsKey(other)).Distinct(StringComparer.Ordinal),
    ];

    private IEnumerable<StepTightening> Told(string variant, string position) => TorqueSource.At(Family, variant, position)
        .Where(source => !source.Evidence.IsRetracted && Holds(source.Span, variant))
        .OrderBy(source => source.Evidence.Grade == EvidenceGrade.MakersDocument ? 0 : 1)
        .ThenBy(source => source.Evidence.Code, StringComparer.Ordinal)
        .Select(source => new StepTightening(
            variant, [.. source.Passes.Select(pass => TorqueSource.TextOf(pass.Turn))],
            source.Passes.Select(pass => pass.Sequence).FirstOrDefault(told => told is not null),
            source.Passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null),
            source.Passes.Select(pass => pass.SingleUse).FirstOrDefault(told => told is not null),
            [.. source.Passes.Select(pass => pass.Note).OfType<string>()], SourceShown.Of(source.Evidence)));

    private static string Words(StepTightening told) =>
        string.Join('|', [.. told.Passes, told.Sequence, told.Lubrication.ToString(), told.SingleUse.ToString(), .. told.Notes, told.Evidence.Evidence]);

    /// <summary>Of the donor's own variant the engine is known; of another every stretch of it is shown.</summary>
    private bool Holds(Span span, string variant) => variant != terms.Build.Donor.Variant
        || ((terms.Built is not { } built || FitCheck.Overlaps(span, built))
            && (terms.Build.Donor.Serial is not { } serial || ((span.SerialFrom ?? serial) <= serial && (span.SerialTo ?? serial) >= serial)));
}
