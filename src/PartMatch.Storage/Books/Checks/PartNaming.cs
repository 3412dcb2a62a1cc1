using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Which part was probably meant by a number that lacks its maker, or has the wrong one?</summary>
internal static class PartNaming
{
    private const int MaxNamed = 3;

    /// <summary>Parts of that number, whoever made them, else the one of the nearest number; else how to write the number with its maker.</summary>
    /// <param name="cell">That <see cref="Cells.Part"/> refuses; of a list the first such item is taken.</param>
    public static string? Complete(BookScope scope, string cell)
    {
        var number = cell.Split('|').Select(item => item.Trim()).FirstOrDefault(item => !Cells.PartOrNone.Accepts(item));
        if (number is null || number.Contains(':', StringComparison.Ordinal) || NumberKey.Of(number).Length == 0)
        {
            return null;
        }

        return OfAnyMaker(scope, number) ?? Nearest(scope, number)
            ?? (Example(scope) is { } maker ? $"write its maker in front, such as {maker}:{number}, and record that part first where no book has it" : null);
    }

    /// <summary>The parts with that number, joined by or; null when there is none.</summary>
    public static string? OfAnyMaker(BookScope scope, string number)
    {
        var key = NumberKey.Of(number);
        var same = Ids(scope).Where(id => NumberKey.Of(id.Number) == key).Select(Text).Order(StringComparer.Ordinal).Take(MaxNamed).ToList();
        return same.Count == 0 ? null : string.Join(" or ", same);
    }

    private static string? Nearest(BookScope scope, string number)
    {
        var near = NearestCode.Find(number, Ids(scope).Select(id => id.Number));
        return near is null ? null : OfAnyMaker(scope, near);
    }

    private static string? Example(BookScope scope) =>
        scope.Own.Head.Has("maker") ? scope.Own.Head["maker"] : scope.Known(Refers.Maker).Order(StringComparer.Ordinal).FirstOrDefault();

    private static IEnumerable<PartId> Ids(BookScope scope) => scope.Known(Refers.Part).Select(PartId.Find).OfType<PartId>();

    private static string Text(PartId id) => $"{id.Maker}:{id.Number}";
}
