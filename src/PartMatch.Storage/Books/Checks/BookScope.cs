using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What the rows of a book may refer to: the book itself, then the books it uses, and what those use.</summary>
internal sealed class BookScope
{
    private readonly Dictionary<(BookTable Table, string Code), string> _books = [];
    private readonly IReadOnlyList<(BookDraft Book, int First)> _partBooks;
    private readonly KeyPlaces _parts;
    private readonly Dictionary<(string Kind, string Feature), FeatureInScope?> _features = [];
    private readonly Dictionary<(string Kind, string Feature, string Effect), string> _ruleWorks = [];
    private readonly HashSet<(string Kind, string Feature)> _seenBeforePaying = [];
    private readonly Dictionary<string, string> _positionKinds = new(StringComparer.Ordinal);
    private readonly HashSet<string> _variants = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _itemParts = new(StringComparer.Ordinal);
    private readonly HashSet<string> _listings = new(StringComparer.Ordinal);
    private readonly HashSet<string> _evidenceOfItems = new(StringComparer.Ordinal);

    /// <param name="used">Their referable files are enough; in ordinal order of the books.</param>
    public BookScope(BookDraft own, IReadOnlyList<BookDraft> used)
    {
        (Own, Used) = (own, used);
        var drafts = used.Prepend(own).ToList();
        var firsts = drafts.Aggregate(new List<int> { 0 }, (all, book) => [.. all, all[^1] + book.Declared(BookTables.Parts).Count]);
        _partBooks = [.. drafts.Zip(firsts)];
        _parts = new KeyPlaces(place => PartId.FindKey(PartAt(place).Id) ?? "", firsts[^1]);
        foreach (var book in used.Prepend(own))
        {
            Add(book);
        }

        foreach (var position in own.Declared(BookTables.Positions))
        {
            _positionKinds.TryAdd(position["position"], position["kind"]);
        }

        _variants.UnionWith(own.Declared(BookTables.Variants).Select(row => row["variant"]));
        _listings.UnionWith(own.Declared(BookTables.Listings).Select(row => row["listing"]));
        foreach (var item in own.Declared(BookTables.Items))
        {
            _itemParts.TryAdd(item["item"], item["part"]);
        }

        // Evidence of the own book hides that of a used book with the same code.
        foreach (var book in used.Prepend(own))
        {
            _evidenceOfItems.UnionWith(book.Declared(BookTables.Sources)
                .Where(row => row["speaks_of"] == Codes.Of(SpeaksOf.Item) && BookOf(BookTables.EvidenceRows, row["evidence"]) == book.Code)
                .Select(row => row["evidence"]));
        }
    }

    public BookDraft Own { get; }

    public IReadOnlyList<BookDraft> Used { get; }

    /// <summary>The book in which a kind, work, maker, seller or piece of evidence is found, the own one first; null when in none.</summary>
    public string? BookOf(BookTable table, string code) => _books.GetValueOrDefault((table, code));

    /// <summary>The part that a cell names, however it writes the number; null when there is none.</summary>
    public PartInScope? FindPart(string id) => PartId.FindKey(id) is { } key && _parts.Find(key) is { } place ? PartAt(place) : null;

    /// <summary>The feature of a kind, or null when there is none, or when its own row is at fault.</summary>
    public FeatureInScope? FindFeature(string kind, string feature) =>
        feature == Feature.Present.Code ? FeatureInScope.PresentOf(kind) : _features.GetValueOrDefault((kind, feature));

    /// <summary>Is it certain that the kind has no such feature?</summary>
    public bool LacksFeature(string kind, string feature) =>
        feature != Feature.Present.Code
        && Own.IsReadable(BookTables.Features)
        && BookOf(BookTables.Kinds, kind) is not null
        && !_features.ContainsKey((kind, feature));

    public IEnumerable<string> FeaturesOf(string kind) => _features.Keys.Where(key => key.Kind == kind).Select(key => key.Feature);

    /// <summary>The work that the kind's rule for that feature names where the effect is work; null when there is no such rule.</summary>
    public string? FindRuleWork(string kind, string feature) => _ruleWorks.GetValueOrDefault((kind, feature, Codes.Of(Effect.Work)));

    /// <summary>Has the feature a photo or a label check?</summary>
    public bool IsSeenBeforePaying(string kind, string feature) => _seenBeforePaying.Contains((kind, feature));

    /// <summary>The kind that sits at a position of the own book, or null when the position is unknown.</summary>
    public string? KindAt(string position) => _positionKinds.GetValueOrDefault(position);

    /// <summary>The kind of the part that an item of the own book is said to be; null when the item or the part is unknown.</summary>
    public string? KindOfItem(string item) => _itemParts.TryGetValue(item, out var part) ? FindPart(part)?.Kind : null;

    /// <summary>Does this evidence speak of one example only, not of a number?</summary>
    public bool SpeaksOfAnItem(string evidence) => _evidenceOfItems.Contains(evidence);

    /// <summary>Does the reference of a cell lead anywhere?</summary>
    public bool Holds(Refers refers, string code) => refers switch
    {
        Refers.Variant => _variants.Contains(code),
        Refers.Position => _positionKinds.ContainsKey(code),
        Refers.Part => FindPart(code) is not null,
        Refers.Item => _itemParts.ContainsKey(code),
        Refers.Listing => _listings.Contains(code),
        _ => BookOf(TableOf(refers), code) is not null,
    };

    /// <summary>Everything such a reference could name, for suggestions.</summary>
    public IEnumerable<string> Known(Refers refers) => refers switch
    {
        Refers.Variant => _variants,
        Refers.Position => _positionKinds.Keys,
        Refers.Part => _parts.Places.Select(place => PartAt(place).Id),
        Refers.Item => _itemParts.Keys,
        Refers.Listing => _listings,
        _ => _books.Keys.Where(key => key.Table == TableOf(refers)).Select(key => key.Code),
    };

    /// <summary>The file that declares what such a reference names.</summary>
    public static BookTable TableOf(Refers refers) => refers switch
    {
        Refers.Maker => BookTables.Makers,
        Refers.Kind => BookTables.Kinds,
        Refers.Work => BookTables.Works,
        Refers.Evidence => BookTables.EvidenceRows,
        Refers.Part => BookTables.Parts,
        Refers.Variant => BookTables.Variants,
        Refers.Position => BookTables.Positions,
        Refers.Item => BookTables.Items,
        Refers.Seller => BookTables.Sellers,
        Refers.Listing => BookTables.Listings,
        _ => throw new ArgumentOutOfRangeException(nameof(refers), refers, "names nothing"),
    };

    private void Add(BookDraft book)
    {
        foreach (var table in new[] { BookTables.Makers, BookTables.Kinds, BookTables.Works, BookTables.EvidenceRows, BookTables.Sellers })
        {
            foreach (var row in book.Declared(table))
            {
                _books.TryAdd((table, row[table.Key[0]]), book.Code);
            }
        }

        foreach (var row in book.Declared(BookTables.Features))
        {
            _features.TryAdd((row["kind"], row["feature"]), FeatureInScope.Find(row));
        }

        foreach (var row in book.Declared(BookTables.Rules).Where(row => row.Has("work")))
        {
            _ruleWorks.TryAdd((row["kind"], row["feature"], row["effect"]), row["work"]);
        }

        _seenBeforePaying.UnionWith(book.Declared(BookTables.Checks)
            .Where(row => Codes.Find<Method>(row["method"]) is Method.Photo or Method.Label)
            .Select(row => (row["kind"], row["feature"])));

        var first = _partBooks.First(parts => parts.Book == book).First;
        foreach (var (index, row) in book.Declared(BookTables.Parts).Index())
        {
            if (PartId.FindKey(row["part"]) is { } key)
            {
                _parts.Add(key, first + index);
            }
        }
    }

    /// <param name="place">Counted through the parts of the own book and then of those in use.</param>
    private PartInScope PartAt(int place)
    {
        var (book, first) = _partBooks.Last(parts => parts.First <= place);
        var row = book.Declared(BookTables.Parts)[place - first];
        return new PartInScope(row["part"], row["kind"], book.Code);
    }
}
