using System.Globalization;
using FluentValidation;
using FluentValidation.Results;
using PartMatch.Core.Buying;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

/// <summary>What the body of a write must be before the book's own rules look at it: known tables, texts, bounded.</summary>
internal sealed class ChangesBodyRules : AbstractValidator<ChangesBody>
{
    /// <summary>The words of a listing are the longest that a cell holds; the size of the whole body is bounded besides.</summary>
    public const int LongestCell = ListingText.MostCharacters;

    public ChangesBodyRules()
    {
        RuleFor(body => body.Rows).Must(rows => rows.Count is > 0 and <= EditStore.MaxRows)
            .WithState(body => new Mending($"1 to {EditStore.MaxRows} rows", "send them in several changes", $"{body.Rows.Count} rows"));

        // JSON can send null where the type says a row.
        RuleForEach(body => body.Rows).NotNull().WithState(_ => new Mending("a row to add, change or remove", "leave it out", "null"));
        RuleForEach(body => body.Rows).ChildRules(row =>
        {
            row.RuleFor(one => one.Table).Must(table => RowStore.Tables.Contains(table)).Otherwise($"one of {string.Join(", ", RowStore.Tables)}");
            row.RuleFor(one => one.Row).Must((one, cells) => cells is not null || one.Key is not null)
                .WithState(_ => new Mending("a row to add, or the key of a row to remove", "give row, or key", "neither row nor key"));
            row.RuleFor(one => one.Row).Custom(CheckCells);
        });
    }

    private static void CheckCells(IReadOnlyDictionary<string, string>? row, ValidationContext<ChangeBody> context)
    {
        // JSON can send null where the type says text.
        foreach (var (column, cell) in row ?? new Dictionary<string, string>())
        {
            if (cell is not { Length: <= LongestCell })
            {
                var found = cell is null ? "null" : string.Create(CultureInfo.InvariantCulture, $"{cell.Length} characters");
                context.AddFailure(new ValidationFailure($"{context.PropertyPath[..context.PropertyPath.LastIndexOf('.')]}.{column}", "no text")
                {
                    CustomState = new Mending($"a text of at most {LongestCell} characters", "leave the member out when it is not recorded", found),
                });
            }
        }
    }
}
