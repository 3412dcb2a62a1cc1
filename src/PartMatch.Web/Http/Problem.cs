using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;
using PartMatch.Web.Builds;
using PartMatch.Web.Editing;

namespace PartMatch.Web.Http;

/// <summary>What went wrong, as RFC 9457 shapes it.</summary>
/// <param name="Type">Where the problem is explained, for example <c>/problems/quantity-needs-unit</c>.</param>
/// <param name="Title">In a few words.</param>
/// <param name="Status">The HTTP status code.</param>
/// <param name="Errors">One entry for each thing to mend; empty when the problem is not one of the request's fields.</param>
public sealed record Problem(string Type, string Title, int Status, IReadOnlyList<FieldError> Errors)
{
    public string? Detail { get; init; }

    /// <summary>The row as it is now, where somebody else has changed it.</summary>
    public RowNow? Present { get; init; }

    /// <summary>The change that removed the row, where somebody else has removed it.</summary>
    public ChangeSeen? Removed { get; init; }

    /// <summary>The row as it was sent: nothing typed is lost.</summary>
    public IReadOnlyDictionary<string, string>? Yours { get; init; }

    /// <summary>The build as it is now, where somebody else has changed it.</summary>
    public BuildAnswer? PresentBuild { get; init; }

    /// <summary>The build as it was sent: nothing typed is lost.</summary>
    public Build? YourBuild { get; init; }

    /// <summary>The order as it is now, where somebody else has told something of it.</summary>
    public Order? PresentOrder { get; init; }

    /// <summary>What was ordered for the build since its orders were seen.</summary>
    public IReadOnlyList<Order>? OrderedMeanwhile { get; init; }

    /// <summary>The columns of a price list, where it is not known what they hold.</summary>
    public IReadOnlyList<PriceListColumn>? Columns { get; init; }

    public const string ContentType = "application/problem+json";

    /// <summary>A problem of one of the <see cref="ProblemTypes"/>, under that type's own title.</summary>
    public static Problem Of(string code, params IReadOnlyList<FieldError> errors)
    {
        var type = ProblemTypes.Get(code);
        return new Problem($"/problems/{code}", type.Title, type.Status, errors);
    }
}

/// <summary>One thing to mend.</summary>
/// <param name="Field">The query parameter, path part, header or cell.</param>
/// <param name="Found">What was there; <c>nothing</c> where something was missing.</param>
/// <param name="Expected">What would have been accepted.</param>
/// <param name="Mend">How to mend it, where there is more to say.</param>
public sealed record FieldError(string Field, string Found, string Expected, string? Mend = null)
{
    /// <summary>What is wrong in one sentence, where found and expected alone do not say it.</summary>
    public string? Reason { get; init; }

    /// <summary>The file of a parts book, where the fault is in one.</summary>
    public string? File { get; init; }

    /// <summary>Line of that file where the row starts, the header being line 1.</summary>
    public int? Line { get; init; }

    public string? Column { get; init; }

    /// <summary>The key of the row, where the fault is in one of the base.</summary>
    public string? Key { get; init; }

    /// <summary>The address of the row that stands in the way.</summary>
    public string? Row { get; init; }

    /// <summary>A fault of a cell, told by the checks of the books: what they expected is a part of their sentence.</summary>
    public static FieldError OfCell(string field, string? found, string reason, string? mend) =>
        new(field, string.IsNullOrEmpty(found) ? "nothing" : found, ExpectedIn(reason), mend) { Reason = reason };

    private static string ExpectedIn(string reason)
    {
        const string Word = "expected ";
        var at = reason.LastIndexOf(Word, StringComparison.Ordinal);
        return at < 0 ? $"something else: {reason}" : reason[(at + Word.Length)..];
    }
}
