using System.Globalization;
using Dapper;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Offers;

/// <summary>What the offers of a book may refer to.</summary>
/// <param name="Parts">Ids of the parts of the book and of those it uses.</param>
/// <param name="Sellers">By code; one of the book itself hides one of a book it uses.</param>
public sealed record OfferScope(IReadOnlySet<string> Parts, IReadOnlyDictionary<string, Seller> Sellers);

/// <summary>An offer about to be stored: its cells by column, without code and listing.</summary>
public sealed record OfferDraft(IReadOnlyDictionary<string, string> Cells);

/// <summary>The words an offer was read from, in the form of <see cref="ListingText.Keep"/>.</summary>
public sealed record ListingDraft(KeptText Text, string? Title, string? Address);

/// <summary>How storing offers ended.</summary>
public abstract record OfferOutcome
{
    private OfferOutcome()
    {
    }

    /// <param name="Change">Null when nothing was new, or nothing was to be stored.</param>
    /// <param name="Offers">In the order sent.</param>
    public sealed record Done(long? Change, IReadOnlyList<OfferTaken> Offers) : OfferOutcome;

    /// <param name="Faults">Row −1 is the seller, −2 the listing, others the offer of that index.</param>
    public sealed record Faulty(IReadOnlyList<RowFault> Faults) : OfferOutcome;

    public sealed record InUse(IReadOnlyList<Books.BookUser> Users, int Total) : OfferOutcome;
}

/// <summary>What became of one offer.</summary>
/// <param name="Code">Of the one that is stored now, or was before.</param>
/// <param name="Earlier">What the same seller asked before.</param>
public sealed record OfferTaken(string Book, string Code, bool IsNew, EarlierPrice? Earlier);

/// <summary>Takes offers into a book: recognises those it has, and writes the others with their words and their seller as one change.</summary>
public sealed class OfferEntry(Database database, OfferStore offers, EditStore edits)
{
    public const int SellerRow = -1;
    public const int ListingRow = -2;

    // What is there already and which code is free must still hold when it is written.
    private readonly Lock _oneAtATime = new();

    /// <summary>Null when there is no such book.</summary>
    public OfferScope? FindScope(string book)
    {
        using var connection = database.Connect();
        var books = Scopes.Of(connection, book);
        return Books.Rows.BookRows.Exists(connection, book)
            ? new OfferScope(
                connection.Query<string>("select part from parts where book in @books", new { books }).ToHashSet(StringComparer.Ordinal),
                offers.Facts().Sellers.Where(seller => books.Contains(seller.Book)).OrderByDescending(seller => seller.Book == book)
                    .DistinctBy(seller => seller.Code)
                    .ToDictionary(seller => seller.Code, StringComparer.Ordinal))
            : null;
    }

    /// <param name="seller">Cells of a seller who is not there yet; null where the offers name one who is.</param>
    /// <param name="isDryRun">Judge and store nothing?</param>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public OfferOutcome Store(
        string book, IReadOnlyList<OfferDraft> drafts, ListingDraft? listing, IReadOnlyDictionary<string, string>? seller, ChangeNote note, bool isDryRun,
        CancellationToken cancellation)
    {
        lock (_oneAtATime)
        {
            var known = offers.Facts().Offers;
            var bySeller = known.ToLookup(offer => offer.Seller, StringComparer.Ordinal);
            var codes = known.Where(offer => offer.Book == book).Select(offer => offer.Code).ToHashSet(StringComparer.Ordinal);
            var changes = new List<RowChange>();
            if (seller is not null)
            {
                changes.Add(new RowChange("sellers", null, null, seller));
            }

            var offersFrom = changes.Count + (AddListing(book, listing, drafts, changes) ? 1 : 0);
            var taken = new List<OfferTaken>();
            var sent = new List<int>();
            var together = new Dictionary<OfferSeen, string>();
            foreach (var (index, draft) in drafts.Index())
            {
                var seen = SeenOf(draft, listing);
                var ofSeller = seen is null ? [] : bySeller[seen.Seller];
                if (seen is not null && OfferMemory.FindSame(ofSeller, seen) is { } same)
                {
                    taken.Add(new OfferTaken(same.Book, same.Code, IsNew: false, null));
                    continue;
                }

                // The same row twice in one list.
                if (seen is not null && together.TryGetValue(seen, out var before))
                {
                    taken.Add(new OfferTaken(book, before, IsNew: false, null));
                    continue;
                }

                var code = FreeCode(codes, seen, index);
                if (seen is not null)
                {
                    together.Add(seen, code);
                }

                taken.Add(new OfferTaken(book, code, IsNew: true, seen is null ? null : OfferMemory.FindEarlier(ofSeller, seen)));
                sent.Add(index);
                changes.Add(new RowChange("offers", null, null, WithCode(draft, code, listing)));
            }

            // Words without a new offer, and a seller without one, are nothing that was asked for.
            return sent.Count == 0
                ? new OfferOutcome.Done(null, taken)
                : edits.Apply(book, changes, note, Act.Edit, cancellation, isDryRun) switch
                {
                    EditOutcome.Done done => new OfferOutcome.Done(isDryRun ? null : done.Change, taken),
                    EditOutcome.Faulty faulty => new OfferOutcome.Faulty([.. faulty.Faults.Select(fault =>
                        fault with { Row = PlaceOf(fault.Row, offersFrom, changes, sent) })]),
                    EditOutcome.InUse inUse => new OfferOutcome.InUse(inUse.Users, inUse.Total),
                    var other => throw new InvalidOperationException($"Storing offers ended as {other.GetType().Name}, which no outcome names."),
                };
        }
    }

    private bool AddListing(string book, ListingDraft? listing, IReadOnlyList<OfferDraft> drafts, List<RowChange> changes)
    {
        if (listing is null || offers.FindListing(book, listing.Text.Digest) is not null)
        {
            return false;
        }

        changes.Add(new RowChange("listings", null, null, Recorded(
            ("listing", listing.Text.Digest), ("seenOn", drafts[0].Cells.GetValueOrDefault("seenOn")), ("title", listing.Title), ("address", listing.Address),
            ("text", listing.Text.Text))));
        return true;
    }

    private static int PlaceOf(int row, int offersFrom, List<RowChange> changes, List<int> sent) =>
        row >= offersFrom ? sent[row - offersFrom] : changes[row].Table == "sellers" ? SellerRow : ListingRow;

    /// <summary>Null where its cells cannot be read: the checks of the book say what is wrong with them.</summary>
    private static OfferSeen? SeenOf(OfferDraft draft, ListingDraft? listing)
    {
        var cells = draft.Cells;
        var number = cells.GetValueOrDefault("numberAsWritten") ?? PartId.Find(cells.GetValueOrDefault("part") ?? "")?.Number;
        var condition = cells.TryGetValue("condition", out var word) ? Codes.Find<ItemCondition>(word) : ItemCondition.NotStated;
        return number is not null && condition is { } known && cells.TryGetValue("seller", out var seller) && cells.TryGetValue("price", out var price)
            && cells.TryGetValue("currency", out var currency) && Amount.Find(price, currency) is not null
            && DateOnly.TryParseExact(cells.GetValueOrDefault("seenOn"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
                ? new OfferSeen(seller, cells.GetValueOrDefault("part"), NumberKey.Of(number), known, Amount.Of(new Money(price, currency)).ToMoney(), day,
                    listing?.Text.Digest)
                : null;
    }

    private static Dictionary<string, string> WithCode(OfferDraft draft, string code, ListingDraft? listing)
    {
        var cells = new Dictionary<string, string>(draft.Cells, StringComparer.Ordinal) { ["offer"] = code };
        if (listing is not null)
        {
            cells["listing"] = listing.Text.Digest;
        }

        return cells;
    }

    private static Dictionary<string, string> Recorded(params IEnumerable<(string Column, string? Cell)> cells) =>
        cells.Where(cell => !string.IsNullOrEmpty(cell.Cell)).ToDictionary(cell => cell.Column, cell => cell.Cell!,
            StringComparer.Ordinal); // filtered for null

    /// <summary>The offer's own code, with a number behind it where the book has it for another one.</summary>
    private static string FreeCode(HashSet<string> codes, OfferSeen? seen, int index)
    {
        // An offer that cannot be read is refused: its code only has to be one.
        var own = seen?.Code ?? string.Create(CultureInfo.InvariantCulture, $"of-unread-{index}");
        var code = own;
        for (var number = 2; !codes.Add(code); number++)
        {
            code = string.Create(CultureInfo.InvariantCulture, $"{own}-{number}");
        }

        return code;
    }
}
