using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>
/// As many bolts as the flange has holes: the pieces at a position go by a count of a mate, where the maker fitted just as many on every variant, and not the
/// same on all. Ours, no source.
/// </summary>
/// <param name="Mate">The position that has the count.</param>
/// <param name="Feature">Of the mate.</param>
internal sealed record PieceCounts(string Mate, string Feature)
{
    /// <summary>Null where the pieces go by nothing of a mate.</summary>
    public static PieceCounts? Find(FamilyFacts family, string position)
    {
        (string Variant, int Pieces)[] fitted =
        [
            .. family.Variants.SelectMany(variant => family.FitmentsAt(variant.Code, position))
                .Where(fitment => fitment is { Part: not null, Quantity: > 0 }).Select(fitment => (fitment.Variant, fitment.Quantity!.Value)).Distinct(), // filtered
        ];
        return fitted.DistinctBy(one => one.Pieces).Count() < 2 ? null : Counts(family, position)
            .FirstOrDefault(count => fitted.All(one => Array.TrueForAll(
                [.. family.FitmentsAt(one.Variant, count.Mate)], mate => mate.Part is { } part && count.Of(family.GetPart(part)) == one.Pieces)));
    }

    /// <summary>How many it takes; null where that is not recorded, or sources differ.</summary>
    public long? Of(Part mate) =>
        mate.Values.Where(value => value.Feature == Feature && value.Evidence?.IsRetracted != true).Select(value => (value.Reading as CountReading)?.Value)
            .Distinct().ToList() is [var only] ? only : null;

    /// <summary>Every count of a part that mates with the position, in ordinal order.</summary>
    private static IEnumerable<PieceCounts> Counts(FamilyFacts family, string position) => family.Joints
        .Where(joint => joint.Evidence?.IsRetracted != true && (joint.Left.Position == position || joint.Right.Position == position))
        .Select(joint => joint.Left.Position == position ? joint.Right.Position : joint.Left.Position)
        .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
        .SelectMany(mate => family.Variants.SelectMany(variant => family.FitmentsAt(variant.Code, mate)).Select(fitment => fitment.Part).OfType<string>()
            .SelectMany(part => family.GetPart(part).Values).Where(value => value.Reading is CountReading).Select(value => value.Feature)
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(feature => new PieceCounts(mate, feature)));
}
