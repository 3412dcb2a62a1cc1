using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Storage.Items;

namespace PartMatch.Web.Items;

/// <summary>Puts an item and what Core makes of it into one answer.</summary>
internal static class ItemDescriber
{
    public static ItemBrief Brief(FamilyFacts facts, Item item)
    {
        var (part, kind) = PartOf(facts, item);
        return new ItemBrief(
            item.Code, part.Id, part.Name, kind.Code, item.Origin, item.Condition, item.Readings.Count, Check(facts, kind, part, item).Condition, Link(item));
    }

    public static ItemShown Show(FamilyFacts facts, Item item, IReadOnlyList<PhotoRow> photos)
    {
        var (part, kind) = PartOf(facts, item);
        return new ItemShown(
            new ItemAsked(item.Book, item.Code), part.Id, part.Name, kind.Code, item.Origin, item.Condition, item.Note,
            item.WorksDone, [.. photos.Select(PhotoShown.Of)], Check(facts, kind, part, item), Link(item));
    }

    // The book's checks see to it that the part of an item is in the family's scope.
    private static (Part Part, Kind Kind) PartOf(FamilyFacts facts, Item item)
    {
        var part = facts.GetPart(item.Part ?? "");
        return (part, facts.GetKind(part.Kind));
    }

    private static ItemAnswer Check(FamilyFacts facts, Kind kind, Part part, Item item) =>
        ItemCheck.Decide(facts, kind, facts.Limits, part, item, facts.Selects);

    private static string Link(Item item) => Permalink.To("/api/items", item.Book, item.Code).ToString();
}
