using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>
/// Several things in one message, a line each with its own number and price: "2) throttle body, P-19-0303-A, £45". Two such lines that are counted
/// or marked off, or three that are not, make a list. Ours, no source.
/// </summary>
internal static class ItemLines
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _mark = new(@"^(?:\d{1,2}[.)]|[-–—*•·])\s", Linear);

    // What has the look of a number of a part: letters or figures with a mark between them, and two figures at least.
    private static readonly Regex _code = new(@"\b[a-z0-9]+(?:[-/.][a-z0-9]*\d[a-z0-9]*)+\b", Linear);

    // "Sold as seen", "sold in pairs" is how, not whether.
    private static readonly Regex _gone = new(
        @"(?:^|[-–—,;:(]\s*)(?:now |already )?(?:sold|gone|verkauft|weg|vendue?|såld|sålt|vendid[oa])\s*(?:[,;.!)]|to\b|$)", Linear);

    private sealed record Item(string Line, IReadOnlyList<ReadPrice> Prices, bool Gone);

    /// <summary>One for each line that offers something; empty where the lines are no list.</summary>
    /// <param name="currency">As the words say of all prices; null where they do not.</param>
    /// <param name="lines">Without what is quoted.</param>
    public static IReadOnlyList<ListedProduct> Products(IReadOnlyList<string> lines, string? currency)
    {
        var items = lines.Select(line => Find(line, currency)).OfType<Item>().Take(StatedProducts.Most).ToList();
        var priced = items.FindAll(item => item.Prices.Count == 1);
        if (priced.Count(item => _mark.IsMatch(item.Line)) < 2 && priced.Count < 3)
        {
            return [];
        }

        HashSet<string> taken = [.. items.Select(item => item.Line)];
        var around = lines.Where(line => !taken.Contains(line)).Select(ConditionWords.Find).FirstOrDefault(found => found != ItemCondition.NotStated);
        return [.. items.Select((item, index) => Product(item, index + 1, around))];
    }

    private static Item? Find(string line, string? currency)
    {
        if (line.Length > 300 || !_code.IsMatch(line))
        {
            return null;
        }

        var item = new Item(line, [.. AmountRoles.Read(line, currency).Where(amount => amount.Role == AmountRole.Price).Select(amount => amount.Price)], _gone.IsMatch(line));
        return item.Prices.Count == 1 || item.Gone ? item : null;
    }

    private static ListedProduct Product(Item item, int place, ItemCondition around)
    {
        var name = _mark.Replace(item.Line, "");
        var condition = ConditionWords.Find(name) is var own && own != ItemCondition.NotStated ? own : around;
        var offer = new ReadOffer(
            item.Prices.Count == 1 ? item.Prices[0] : null,
            PieceWords.Find(name) ?? 1,
            condition,
            item.Gone ? Availability.SoldOut : StockWords.Find(name),
            null, null, null, null, null, OfferTerms.NotStated, LevelWords.Find(name));
        return new(new(StatementForm.Text, name, null, [], condition, [offer], null), [new(PassagePlace.Text, $"line {place} of the list", name)]);
    }
}
