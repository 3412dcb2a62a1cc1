using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Does every code and part that a row names exist, in the book or in a book that it uses?</summary>
internal static class ReferenceChecks
{
    public static void Run(BookScope scope, ErrorList errors, ImportWatch watch)
    {
        foreach (var table in BookTables.All)
        {
            int[] columns =
            [
                .. table.Columns.Index()
                    .Where(column => column.Item.Refers != Refers.Nothing && scope.Own.IsReadable(BookScope.TableOf(column.Item.Refers)))
                    .Select(column => column.Index),
            ];

            foreach (var row in scope.Own.Rows(table))
            {
                foreach (var index in columns)
                {
                    if (row[index].Length > 0)
                    {
                        Check(scope, row, table.Columns[index], row[index], errors);
                    }
                }

                watch.Row();
            }
        }
    }

    private static void Check(BookScope scope, BookRow row, BookColumn column, string cell, ErrorList errors)
    {
        if (!column.Rule.IsList)
        {
            CheckOne(scope, row, column, cell, errors);
            return;
        }

        foreach (var code in cell.Split('|'))
        {
            CheckOne(scope, row, column, code, errors);
        }
    }

    private static void CheckOne(BookScope scope, BookRow row, BookColumn column, string code, ErrorList errors)
    {
        var isNone = column.Refers == Refers.Part && code == Part.None;
        if (!isNone && !scope.Holds(column.Refers, code) && (column.Rule with { IsList = false }).FindFault(code) is null)
        {
            Refuse(scope, row, column, code, errors);
        }
    }

    // By itself, so that a sound cell pays for no closure.
    private static void Refuse(BookScope scope, BookRow row, BookColumn column, string code, ErrorList errors) =>
        errors.Add(row, column.Name, Reason(scope, column.Refers, code), () => Meant(scope, column.Refers, code));

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
