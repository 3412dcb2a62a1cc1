using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Storage.Items;

namespace PartMatch.Web.Items;

/// <summary>Every item of a family, in ordinal order.</summary>
public sealed record ItemsAnswer(ItemsAsked Asked, IReadOnlyList<ItemBrief> Items, string Permalink);

public sealed record ItemsAsked(string Family);

/// <summary>An item in a list.</summary>
/// <param name="Readings">How many features were read on it.</param>
/// <param name="Condition">Against the service limits that hold for it.</param>
public sealed record ItemBrief(string Item, string Part, string Name, string Kind, ItemOrigin? Origin, string? AsFound, int Readings, ItemCondition Condition, string Link);

/// <summary>One item: what it is, what was read on it, and what that says.</summary>
/// <param name="AsFound">Its condition in words, as somebody found it.</param>
/// <param name="Check">Its readings, against the service limits that hold for it and the tables of graded parts.</param>
public sealed record ItemShown(
    ItemAsked Asked,
    string Part,
    string Name,
    string Kind,
    ItemOrigin? Origin,
    string? AsFound,
    string? Note,
    IReadOnlyList<WorkDone> WorksDone,
    IReadOnlyList<PhotoShown> Photos,
    ItemAnswer Check,
    string Permalink);

public sealed record ItemAsked(string Family, string Item);

/// <param name="Link">Where the picture is.</param>
public sealed record PhotoShown(string Photo, string? Caption, string Link)
{
    internal static PhotoShown Of(PhotoRow photo) => new(photo.Photo, photo.Caption, $"/api/images/{photo.Image}");
}
