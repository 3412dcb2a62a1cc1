using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>
/// Several things in one message, a line each with its own number and price: "2) throttle body, P-19-0303-A, £45". Two such lines that are counted
/// or marked off, or three that are not, make a list; and so does one line that names a number and a price, and again a number and a price, in turn.
/// Ours, no source.
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

    // "…, and": one place to part at.
    private static readonly Regex _parting = new(@"[,;.+&]\s+(?:(?:and|und|et|och|y)\b)?|\s(?:and|und|et|och|y|[-–—])\s", Linear);

    private static readonly Regex _ofAll = new(
        @"\b(?:both|all|beide[ns]?|alle|alles|les deux|tous|toutes|båda|bägge|alla|ambos|ambas|todos|todas)\b", Linear);

    /// <param name="Whole">The line that it is a piece of.</param>
    private sealed record Item(string Line, string Whole, IReadOnlyList<ReadPrice> Prices, bool Gone);

    /// <summary>One for each line that offers something; empty where the lines are no list.</summary>
    /// <param name="currency">As the words say of all prices; null where they do not.</param>
    /// <param name="lines">Without what is quoted.</param>
    public static IReadOnlyList<ListedProduct> Products(IReadOnlyList<string> lines, string? currency)
    {
        var items = lines.SelectMany(line => Find(line, currency)).Take(StatedProducts.Most).ToList();
        var priced = items.FindAll(item => item.Prices.Count == 1);
        if (priced.Count(item => _mark.IsMatch(item.Line)) < 2 && priced.Count < 3 && priced.TrueForAll(item => item.Line == item.Whole))
        {
            return [];
        }

        HashSet<string> taken = [.. items.Select(item => item.Whole)];
        var around = lines.Where(line => !taken.Contains(line)).Select(ConditionWords.Find).FirstOrDefault(found => found != ItemCondition.NotStated);
        return [.. items.Select((item, index) => Product(item, index + 1, around))];
    }

    private static IEnumerable<Item> Find(string line, string? currency) => line.Length > 300 || !_code.IsMatch(line) ? []
        : Pieces(line, currency)
            .Select(piece => new Item(
                piece, line, [.. AmountRoles.Read(piece, currency).Where(amount => amount.Role == AmountRole.Price).Select(amount => amount.Price)],
                _gone.IsMatch(piece)))
            .Where(item => item.Prices.Count == 1 || item.Gone);

    /// <summary>A piece for each number with its price, where they come in turn and each pair is parted from the next in one place; else the line.</summary>
    private static string[] Pieces(string line, string? currency)
    {
        (int Start, int End, bool IsCode)[] marks =
        [
            .. _code.Matches(line).Select(code => (code.Index, code.Index + code.Length, true))
                .Concat(PriceText.Find(line, currency).Where(price => price.Marked).Select(price => (price.Start, price.Start + price.Length, false)))
                .OrderBy(mark => mark.Item1),
        ];

        // "x1.299 kr" may be a code or a price: what lies over one another is not parted.
        if (marks.Length < 4 || marks.Length % 2 != 0 || marks.Where((mark, index) => mark.IsCode != (marks[0].IsCode == (index % 2 == 0))).Any()
            || marks.Zip(marks.Skip(1)).Any(pair => pair.First.End > pair.Second.Start))
        {
            return [line];
        }

        List<string> pieces = [];
        var from = 0;
        for (var pair = 1; pair < marks.Length / 2; pair++)
        {
            var gap = line[marks[(2 * pair) - 1].End..marks[2 * pair].Start];
            var partings = _parting.Matches(gap);

            // "…, used, and …": of which of the two is open.
            if (partings.Count == 0 || (partings.Count > 1 && ConditionWords.Find(gap) != ItemCondition.NotStated))
            {
                return [line];
            }

            var parting = partings[^1];
            var at = marks[(2 * pair) - 1].End + parting.Index;
            pieces.Add(line[from..at].Trim());
            from = at + parting.Length;
        }

        pieces.Add(line[from..].Trim());
        return pieces.TrueForAll(piece => AmountRoles.Read(piece, currency) is [{ Role: AmountRole.Price }]) ? [.. pieces] : [line];
    }

    private static ListedProduct Product(Item item, int place, ItemCondition around)
    {
        var name = _mark.Replace(item.Line, "");
        var condition = ConditionWords.Find(name) is var own && own != ItemCondition.NotStated ? own
            : item.Line != item.Whole && _ofAll.IsMatch(item.Whole) && ConditionWords.Find(item.Whole) is var shared && shared != ItemCondition.NotStated
                ? shared
            : around;
        var offer = new ReadOffer(
            item.Prices.Count == 1 ? item.Prices[0] : null,
            PieceWords.Find(name) ?? 1,
            condition,
            item.Gone ? Availability.SoldOut : StockWords.Find(name),
            null, null, null, null, null, OfferTerms.NotStated, LevelWords.Find(name));
        return new(new(StatementForm.Text, name, null, [], condition, [offer], null), [new(PassagePlace.Text, $"line {place} of the list", name)]);
    }
}
