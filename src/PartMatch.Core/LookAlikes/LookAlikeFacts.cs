using System.Collections.Concurrent;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>
/// What look-alike questions are decided from: every number, and every family with the parts in its scope. Immutable and costly to build:
/// keep it until the base changes.
/// </summary>
public sealed class LookAlikeFacts
{
    private readonly ILookup<string, FittedPlace> _placesOf;

    /// <param name="numbers">Every number of the base, whatever book it stands in.</param>
    /// <param name="families">Every family of the base.</param>
    /// <param name="odds">What was counted of offers and deliveries; null where nothing was.</param>
    public LookAlikeFacts(LookAlikeIndex numbers, IReadOnlyList<FamilyFacts> families, Odds? odds = null)
    {
        (Numbers, Families, Odds) = (numbers, families, odds ?? Odds.None);
        Pairs =
        [
            .. families.SelectMany(family => family.Pairs).Distinct()
                .OrderBy(pair => pair.PartA, StringComparer.Ordinal).ThenBy(pair => pair.PartB, StringComparer.Ordinal),
        ];
        Supersessions = [.. families.SelectMany(family => family.Supersessions).Where(link => link.Evidence?.IsRetracted != true)];
        Mattering = new MatteringFeatures(families);
        _placesOf = families
            .SelectMany(family => family.Fitments, (family, fitment) => new FittedPlace(family, fitment))
            .Where(place => place.Fitment.Part is not null && place.Fitment.Evidence?.IsRetracted != true)
            .ToLookup(place => place.Fitment.Part!, StringComparer.Ordinal); // filtered just above
    }

    private LookAlikeFacts(LookAlikeFacts other, Odds odds)
    {
        (Numbers, Families, Pairs, Supersessions, Mattering, Odds) = (other.Numbers, other.Families, other.Pairs, other.Supersessions, other.Mattering, odds);
        (Ground, _placesOf) = (other.Ground, other._placesOf);

        // How often a part is offered orders a list; what came in place of what makes a danger larger.
        LargestDanger = odds.MixUps.SequenceEqual(other.Odds.MixUps) ? other.LargestDanger : new(StringComparer.Ordinal);
    }

    public LookAlikeIndex Numbers { get; }

    public IReadOnlyList<FamilyFacts> Families { get; }

    /// <summary>Pairs of every family; one that several families share, by a book they both use, once. Ordered by part A, then part B, ordinal.</summary>
    public IReadOnlyList<JudgedPair> Pairs { get; }

    public Odds Odds { get; }

    /// <summary>The same for facts that differ in what was counted alone: what costs time and rests on no count is kept by it.</summary>
    internal object Ground { get; } = new();

    internal Supersession[] Supersessions { get; }

    internal MatteringFeatures Mattering { get; }

    /// <summary>Found before: many lists show the same parts.</summary>
    internal ConcurrentDictionary<string, DangerLevel?> LargestDanger { get; } = new(StringComparer.Ordinal);

    /// <summary>The same facts with what is counted by now; what was worked out of them stays worked out.</summary>
    public LookAlikeFacts With(Odds odds) => ReferenceEquals(odds, Odds) ? this : new LookAlikeFacts(this, odds);

    /// <summary>The places of a part, in one family or, with null, in all.</summary>
    internal IEnumerable<FittedPlace> PlacesOf(string part, string? family) =>
        _placesOf[part].Where(place => family is null || place.Family.Family.Code == family);

    /// <summary>A part by its id; without its description when it is in no family's scope.</summary>
    internal CataloguePart FindPart(string id)
    {
        var family = Families.FirstOrDefault(family => family.FindPart(id) is not null);
        var part = family?.FindPart(id);
        return new CataloguePart(id, part, part is null ? null : family?.FindKind(part.Kind));
    }

    /// <summary>Has somebody found that the two are mixed up, to somebody's harm?</summary>
    internal bool IsTrap(CataloguePart one, CataloguePart other) => Pairs.Any(pair =>
        pair.Judgement == PairJudgement.Trap && pair.Evidence?.IsRetracted != true
        && ((pair.PartA == one.Id && pair.PartB == other.Id) || (pair.PartA == other.Id && pair.PartB == one.Id)));

    /// <summary>Every other part of the same kind, whatever its family, in ordinal order.</summary>
    internal IEnumerable<CataloguePart> OthersOfKind(CataloguePart asked) =>
        asked is { Part: { } part, Kind: not null }
            ? Families.SelectMany(family => family.PartsOfKind(part.Kind)).Where(other => other.Id != part.Id)
                .DistinctBy(other => other.Id).OrderBy(other => other.Id, StringComparer.Ordinal)
                .Select(other => new CataloguePart(other.Id, other, asked.Kind))
            : [];
}

/// <summary>A place where the maker fitted a part.</summary>
internal sealed record FittedPlace(FamilyFacts Family, Fitment Fitment);

/// <summary>A part as far as the base describes it.</summary>
/// <param name="Id">Null when the number asked about is in no book.</param>
/// <param name="Part">Null as well when no family has the part in its scope.</param>
internal sealed record CataloguePart(string? Id, Part? Part, Kind? Kind)
{
    /// <summary>What a number in no book stands on.</summary>
    public static CataloguePart Unknown { get; } = new(null, null, null);

    public bool IsSameKindAs(CataloguePart other) => Part is not null && other.Part is not null && Part.Kind == other.Part.Kind;
}
