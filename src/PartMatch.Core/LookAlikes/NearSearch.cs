using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>Which numbers are near this one? Numbers only, judged by nothing but how they are written.</summary>
/// <param name="Limit">Rows of a page, at least 1.</param>
/// <param name="Cursor">From the page before; null for the first page.</param>
public sealed record NearQuestion(string Number, string? Maker = null, int Limit = LookAlikeQuestion.DefaultLimit, string? Cursor = null);

/// <summary>The numbers near the one asked about.</summary>
/// <param name="Complete">No number within the limit is missing from the whole list.</param>
/// <param name="Within">Edits on folded keys that counted as near.</param>
/// <param name="Total">Rows of the whole list.</param>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
/// <param name="Numbers">This page, ordered by cost, key, part.</param>
public sealed record NearAnswer(NearAsked Asked, bool Complete, int Within, int Total, string? Cursor, IReadOnlyList<NearRow> Numbers)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question as the answer repeats it.</summary>
public sealed record NearAsked(string Number, string NumberKey, string? Maker, int Limit);

/// <summary>One number near the one asked about.</summary>
public sealed record NearRow(string Number, string Part, int Edits, int FoldedEdits, double Cost);

/// <summary>Decides a <see cref="NearQuestion"/>.</summary>
public static class NearSearch
{
    /// <exception cref="ArgumentException">The limit is below 1, or the cursor is not one that an answer gave out.</exception>
    public static NearAnswer Decide(LookAlikeIndex index, NearQuestion question)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Limit, 1, nameof(question));
        var key = NumberKey.Of(question.Number);
        var found = index.FindInAnyOrder(key);
        var close = found.Within(1);
        var near = AskedNumber.Resolve(close, key, question.Maker).Near;
        var page = FirstOf(near, question) ?? PageOf(AskedNumber.Resolve(found.Within(LookAlikeIndex.LimitFor(key)), key, question.Maker).Near, question);
        return new NearAnswer(
            new NearAsked(question.Number, key, question.Maker, question.Limit),
            Complete: true,
            LookAlikeIndex.LimitFor(key),
            found.Count - (close.Count - near.Count),
            page.Cursor,
            [.. page.Rows.Select(row => new NearRow(row.Number.Written, row.Number.Part, row.Edits, row.FoldedEdits, row.Cost))]);
    }

    // The first page of those one edit away; null where it takes more. No two edits cost less than that: where so many cost less, the others need not be known.
    private static ListPage<NearNumber>? FirstOf(IReadOnlyList<NearNumber> close, NearQuestion question)
    {
        if (question.Cursor is not null || close.Count <= question.Limit)
        {
            return null;
        }

        var first = Ordered(close, question.Limit);
        return first[^1].Cost < CostsFrom.LeastOfTwoEdits ? ListPage.Of(first, RankOf, question.Limit, null) : null;
    }

    private static ListPage<NearNumber> PageOf(IReadOnlyList<NearNumber> near, NearQuestion question) =>
        ListPage.Of(Ordered(near, question.Cursor is null ? question.Limit : near.Count), RankOf, question.Limit, question.Cursor);

    // One more than the page tells that there are more; ordering the first of many takes a fraction of ordering all.
    private static NearNumber[] Ordered(IEnumerable<NearNumber> near, int page) => [.. near.Order(NearNumber.InOrder).Take(page + 1)];

    private static ListRank RankOf(NearNumber near) => new(0, 0, near.Cost, near.Number.Key, near.Number.Part);
}
