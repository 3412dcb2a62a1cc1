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
        var key = NumberKey.Of(question.Number);
        var near = AskedNumber.Resolve(index.FindInAnyOrder(key), key, question.Maker).Near;
        var page = FirstOf(near, question.Limit, question.Cursor);
        return new NearAnswer(
            new NearAsked(question.Number, key, question.Maker, question.Limit),
            Complete: true,
            LookAlikeIndex.LimitFor(key),
            near.Count,
            page.Cursor,
            [.. page.Rows.Select(row => new NearRow(row.Number.Written, row.Number.Part, row.Edits, row.FoldedEdits, row.Cost))]);
    }

    // Ordering the first of many takes a fraction of ordering all; one more than the page tells that there are more.
    private static ListPage<NearNumber> FirstOf(IReadOnlyList<NearNumber> near, int limit, string? cursor)
    {
        NearNumber[] first = cursor is null ? Ordered(near.Where(number => number.FoldedEdits < 2), limit + 1) : [];

        // No two edits cost less than that: where so many cost less, it need not be known what the others cost.
        var isEnough = first.Length > limit && first[^1].Cost < CostsFrom.LeastOfTwoEdits;
        return ListPage.Of(isEnough ? first : Ordered(near, cursor is null ? limit + 1 : near.Count), RankOf, limit, cursor);
    }

    private static NearNumber[] Ordered(IEnumerable<NearNumber> near, int most) => [.. near.Order(NearNumber.InOrder).Take(most)];

    private static ListRank RankOf(NearNumber near) => new(0, 0, near.Cost, near.Number.Key, near.Number.Part);
}
