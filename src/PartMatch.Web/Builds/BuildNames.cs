using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Builds;

/// <summary>Does the base hold what a build names? What it does not hold is told with what was probably meant.</summary>
internal sealed class BuildNames(FamilyStore families, PartStore parts, OfferStore offers, ItemStore items)
{
    /// <summary>One error for each name that leads nowhere, in the order of the document.</summary>
    public IReadOnlyList<FieldError> FaultsOf(Build build)
    {
        if (families.FindFamily(build.Family) is not { } facts)
        {
            return [KnownNames.Unknown("family", build.Family, [.. families.List().Select(family => family.Family)])];
        }

        string?[] sellers = [.. offers.Facts().Sellers.Select(seller => seller.Code).Distinct(StringComparer.Ordinal)];
        return
        [
            .. new[]
            {
                build.Target is null ? null : VariantFault("target", build.Target, facts),
            }
            .Concat(DonorFaults("donor", build.Donor, facts))
            .Concat(build.Donors.Index().SelectMany(offer => DonorFaults($"donors[{offer.Index}].donor", offer.Item.Donor, facts)))
            .Concat(build.Wishes.Index().SelectMany(wish => WishFaults($"wishes[{wish.Index}]", wish.Item, facts)))
            .Concat(build.InHand.Index().Select(held => PartFault($"inHand[{held.Index}].part", held.Item.Part, facts, null)))
            .Concat(build.Works.Index().SelectMany(work => WorkFaults($"works[{work.Index}]", work.Item, facts)))
            .Concat(build.RefusedSellers.Index().Select(seller => Known($"refusedSellers[{seller.Index}]", seller.Item, sellers!))) // none of them is null
            .OfType<FieldError>(),
        ];
    }

    private IEnumerable<FieldError?> DonorFaults(string field, Donor donor, FamilyFacts facts) =>
    [
        VariantFault($"{field}.variant", donor.Variant, facts),
        .. donor.States.Index().SelectMany(state => StateFaults($"{field}.states[{state.Index}]", state.Item, facts)),
        .. donor.ComesWith.Index().Select(held => PartFault($"{field}.comesWith[{held.Index}].part", held.Item.Part, facts, null)),
    ];

    private IEnumerable<FieldError?> StateFaults(string field, DonorState state, FamilyFacts facts)
    {
        yield return PositionFault($"{field}.position", state.Position, facts);
        if (state.Item is not { } address)
        {
            yield break;
        }

        var item = address.Split('/', 2) is [var book, var code] && book == facts.Family.Code ? items.Find(book, code) : null;
        var position = facts.FindPosition(state.Position);
        if (item is null)
        {
            yield return Known($"{field}.item", address, [.. items.List(facts.Family.Code).Select(known => known.Address)]);
        }
        else if (position is not null && item.Part is { } claimed && facts.FindPart(claimed) is { } part && part.Kind != position.Kind)
        {
            yield return OtherKind($"{field}.item", $"{address}, which is {part.Id}", part, [position.Kind]);
        }
    }

    private IEnumerable<FieldError?> WishFaults(string field, Wish wish, FamilyFacts facts)
    {
        string[] groups = [.. facts.Positions.Select(position => position.Group).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        yield return wish.Position is { } code ? PositionFault($"{field}.position", code, facts) : Known($"{field}.group", wish.Group ?? "", groups);
        foreach (var like in wish.Like.Index())
        {
            yield return VariantFault($"{field}.like[{like.Index}]", like.Item, facts);
        }

        string[] kinds =
            [.. facts.Positions.Where(position => position.Code == wish.Position || position.Group == wish.Group).Select(position => position.Kind)];
        foreach (var part in wish.Parts.Index().Where(part => part.Item != Part.None))
        {
            yield return PartFault($"{field}.parts[{part.Index}]", part.Item, facts, kinds);
        }

        foreach (var part in wish.Refuse.Index())
        {
            yield return PartFault($"{field}.refuse[{part.Index}]", part.Item, facts, kinds);
        }
    }

    /// <summary>What of a line of a finished engine the base does not hold.</summary>
    public IEnumerable<FieldError> LineFaults(string field, string position, string part, FamilyFacts facts) => new[]
    {
        PositionFault($"{field}.position", position, facts),
        part == Part.None ? null : PartFault($"{field}.part", part, facts, facts.FindPosition(position) is { } found ? [found.Kind] : null),
    }.OfType<FieldError>();

    private static IEnumerable<FieldError?> WorkFaults(string field, AskedWork work, FamilyFacts facts)
    {
        yield return Known($"{field}.work", work.Work, [.. facts.Works.Select(known => known.Code)]);
        yield return work.WhenNew is { } position ? PositionFault($"{field}.whenNew", position, facts) : null;
    }

    /// <summary>What is wrong with a part that is named there; null where nothing is.</summary>
    /// <param name="kinds">Kinds that can sit where it is named; null for any, empty where the place itself is unknown.</param>
    public FieldError? PartFault(string field, string written, FamilyFacts facts, string[]? kinds)
    {
        if (facts.FindPart(written) is { } part)
        {
            return IsOneOf(kinds, part) ? null : OtherKind(field, written, part, kinds ?? []);
        }

        var known = facts.Parts.Where(candidate => IsOneOf(kinds, candidate))
            .GroupBy(candidate => candidate.Id.ToLowerInvariant()).ToDictionary(group => group.Key, group => group.First().Id);
        var named = CommonRules.IsNumber(written) ? NamedPart.Find(written, null, parts).Candidates : [];
        var meant = named.Where(candidate => facts.FindPart(candidate.Id) is not null).Select(candidate => candidate.Id).ToList();
        return new FieldError(
            field, written.Length == 0 ? "nothing" : written, $"a part that {facts.Family.Code} or the books it uses hold, as maker:number",
            meant.Count > 0 ? $"did you mean {string.Join(" or ", meant)}?"
                : named.Count > 0 ? $"{named[0].Id} stands in a book that {facts.Family.Code} does not use: record it there first"
                : Nearest.Find(written, known.Keys) is { } near ? $"did you mean {known[near]}?"
                : "look it up under Find a part (/api/parts?q=), or record it first");
    }

    private static FieldError OtherKind(string field, string found, Part part, string[] kinds) => new(
        field, $"{found}, a part of kind {part.Kind}", $"a part of kind {string.Join(" or ", kinds.Distinct(StringComparer.Ordinal))}",
        "name it at the position where it sits");

    private static bool IsOneOf(string[]? kinds, Part part) => kinds is null or [] || kinds.Contains(part.Kind, StringComparer.Ordinal);

    private static FieldError? VariantFault(string field, string code, FamilyFacts facts) =>
        facts.FindVariant(code) is not null ? null : KnownNames.Unknown(field, code, [.. facts.Variants.Select(variant => variant.Code)]);

    private static FieldError? PositionFault(string field, string code, FamilyFacts facts) =>
        facts.FindPosition(code) is not null ? null : KnownNames.Unknown(field, code, [.. facts.Positions.Select(position => position.Code)]);

    private static FieldError? Known(string field, string found, string[] known) =>
        known.Contains(found, StringComparer.Ordinal) ? null : KnownNames.Unknown(field, found, known);
}
