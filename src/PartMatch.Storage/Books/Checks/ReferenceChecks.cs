using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Does every code and part that a row names exist, in the book or in a book that it uses?</summary>
internal static class ReferenceChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var table in BookTables.All)
        {
            var columns = table.Columns.Where(column => column.Refers != Refers.Nothing && scope.Own.IsReadable(BookScope.TableOf(column.Refers))).ToList();
            if (columns.Count == 0)
            {
                continue;
            }

            foreach (var row in scope.Own.Rows(table))
            {
                foreach (var column in columns.Where(column => row.Has(column.Name)))
                {
                    Check(scope, row, column, errors);
                }
            }
        }
    }

    private static void Check(BookScope scope, BookRow row, BookColumn column, ErrorList errors)
    {
        foreach (var code in column.Rule.IsList ? row.List(column.Name) : [row[column.Name]])
        {
            var isNone = column.Refers == Refers.Part && code == Part.None;
            if (isNone || scope.Holds(column.Refers, code))
            {
                continue;
            }

            var single = column.Rule.IsList ? column.Rule with { IsList = false } : column.Rule;
            if (single.FindFault(code) is null)
            {
                errors.Add(row, column.Name, Reason(scope, column.Refers, code), () => Meant(scope, column.Refers, code));
            }
        }
    }

    /// <summary>The whole number of another maker says more than a slip of the pen.</summary>
    private static string? Meant(BookScope scope, Refers refers, string code) =>
        (refers == Refers.Part && PartId.Find(code) is { } id ? PartNaming.OfAnyMaker(scope, id.Number) : null) ?? NearestCode.Find(code, scope.Known(refers));

    private static string Reason(BookScope scope, Refers refers, string code)
    {
        var isOfTheBook = refers is Refers.Variant or Refers.Position or Refers.Item or Refers.Listing || scope.Used.Count == 0;
        var where = isOfTheBook ? "this book" : $"this book or {string.Join(", ", scope.Used.Select(book => book.Code))}";
        return $"no {refers.ToString().ToLowerInvariant()} '{code}' in {where}: expected one of {BookScope.TableOf(refers).File}";
    }
}
