using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What may be said only once: in the scope of the book, or over the whole base.</summary>
internal static class UniquenessChecks
{
    public static void Run(BookScope scope, BaseFacts others, ErrorList errors)
    {
        CheckParts(scope.Own, others, errors);
        foreach (var row in scope.Own.Rows(BookTables.Makers))
        {
            if (others.Makers.TryGetValue(row["maker"], out var known) && known.Name != row["name"])
            {
                errors.Add(row, "name", $"book {known.Book} names the maker '{row["maker"]}' '{known.Name}': one code is one maker", known.Name);
            }
        }
    }

    /// <summary>A kind, feature, rule, work, check or shot is declared in one book of a scope only: else two meanings would meet in one family.</summary>
    public static void RunInScope(BookScope scope, ErrorList errors)
    {
        foreach (var table in new[] { BookTables.Kinds, BookTables.Features, BookTables.Rules, BookTables.Works, BookTables.Checks, BookTables.Shots })
        {
            var declared = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var book in scope.Used)
            {
                foreach (var key in book.Declared(table).Select(row => row.KeyText))
                {
                    if (!declared.TryAdd(key, book.Code))
                    {
                        errors.Add(
                            scope.Own.Head, "uses", $"'{key}' stands in {table.File} of both {declared[key]} and {book.Code}",
                            "use only one of the two books");
                    }
                }
            }

            foreach (var row in scope.Own.Rows(table))
            {
                if (declared.TryGetValue(row.KeyText, out var book))
                {
                    errors.Add(
                        row, table.Key[^1], $"'{row.KeyText}' is already declared by book {book}, which this book uses",
                        "leave it out, or give it another code");
                }
            }
        }

        CheckEvidence(scope, errors);
    }

    private static void CheckParts(BookDraft own, BaseFacts others, ErrorList errors)
    {
        var rows = own.Declared(BookTables.Parts);
        var places = new KeyPlaces(place => PartId.FindKey(rows[place]["part"]) ?? "", rows.Count);
        foreach (var (place, row) in rows.Index())
        {
            if (row.IsBroken || PartId.FindKey(row["part"]) is not { } key)
            {
                continue;
            }

            if (others.BookOfPart.TryGetValue(key, out var book))
            {
                errors.Add(row, "part", $"book {book} already describes this maker's number", "leave it out here, and use that book");
            }

            // The same text twice is found with the other keys; here the number is the same and its writing is not.
            if (places.Add(key, place) is var first && first != place && rows[first]["part"] != row["part"])
            {
                errors.Add(
                    row, "part", $"the same number of the same maker stands {rows[first].Place} as {rows[first]["part"]}",
                    "leave one row out");
            }
        }
    }

    private static void CheckEvidence(BookScope scope, ErrorList errors)
    {
        var own = scope.Own.Declared(BookTables.EvidenceRows).Select(row => row["evidence"]).ToHashSet(StringComparer.Ordinal);
        var twice = scope.Used.SelectMany(book => book.Declared(BookTables.EvidenceRows)).GroupBy(row => row["evidence"], StringComparer.Ordinal)
            .Where(rows => rows.Skip(1).Any() && !own.Contains(rows.Key))
            .Select(rows => rows.Key)
            .ToHashSet(StringComparer.Ordinal);
        if (twice.Count == 0)
        {
            return;
        }

        foreach (var table in BookTables.All)
        {
            foreach (var column in table.Columns.Where(column => column.Refers == Refers.Evidence))
            {
                foreach (var row in scope.Own.Rows(table).Where(row => twice.Contains(row[column.Name])))
                {
                    errors.Add(row, column.Name, $"'{row[column.Name]}' stands in several of the books this one uses", "cite evidence of this book");
                }
            }
        }
    }
}
