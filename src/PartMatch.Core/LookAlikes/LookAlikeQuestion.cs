using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>Which parts can be taken for the one with this number?</summary>
/// <param name="Number">As written; it need not be in any book.</param>
/// <param name="Maker">Settles a number that two makers use; null when not asked.</param>
/// <param name="Family">Context for the danger, hiding nothing; null judges over every family.</param>
/// <param name="Limit">Rows of a page, at least 1.</param>
/// <param name="Cursor">From the page before; null for the first page.</param>
public sealed record LookAlikeQuestion(string Number, string? Maker = null, string? Family = null, int Limit = LookAlikeQuestion.DefaultLimit, string? Cursor = null)
{
    public const int DefaultLimit = 20;

    public const int MaxLimit = 200;

    /// <summary>The question with its defaults filled in.</summary>
    public LookAlikeAsked AsAsked() => new(Number, NumberKey.Of(Number), Maker, Family, Limit);
}

/// <summary>The question as the answer repeats it.</summary>
public sealed record LookAlikeAsked(string Number, string NumberKey, string? Maker, string? Family, int Limit);
