namespace PartMatch.Core.LookAlikes;

/// <summary>How many edits lead from one key to another.</summary>
public static class NumberDistance
{
    // Keys are at most 40 characters; a longer text costs one allocation.
    private const int RowOnStack = 64;

    /// <summary>Insertions, deletions and substitutions of one character.</summary>
    /// <remarks>Source: V. I. Levenshtein, Soviet Physics Doklady 10:707–710, 1966.</remarks>
    public static int Levenshtein(ReadOnlySpan<char> left, ReadOnlySpan<char> right) =>
        Fill(left, right, Math.Max(left.Length, right.Length), transpositions: false);

    /// <summary>
    /// The same with the swap of two neighbours as one edit, no part of the text being edited twice: optimal string alignment.
    /// CA to ABC is 3 here, where the unrestricted distance of Damerau and Levenshtein is 2.
    /// </summary>
    public static int OptimalStringAlignment(ReadOnlySpan<char> left, ReadOnlySpan<char> right) =>
        Fill(left, right, Math.Max(left.Length, right.Length), transpositions: true);

    /// <summary>Optimal string alignment up to a limit; beyond it the work stops.</summary>
    /// <param name="limit">Largest distance of interest, 0 or more.</param>
    /// <returns>The distance when it is at most <paramref name="limit"/>, otherwise <paramref name="limit"/> + 1.</returns>
    public static int OptimalStringAlignmentWithin(ReadOnlySpan<char> left, ReadOnlySpan<char> right, int limit) =>
        Fill(left, right, limit, transpositions: true);

    private static int Fill(ReadOnlySpan<char> left, ReadOnlySpan<char> right, int limit, bool transpositions)
    {
        // An equal beginning or end never needs an edit, with or without transpositions.
        var shared = left.CommonPrefixLength(right);
        left = left[shared..];
        right = right[shared..];
        while (!left.IsEmpty && !right.IsEmpty && left[^1] == right[^1])
        {
            left = left[..^1];
            right = right[..^1];
        }

        if (Math.Abs(left.Length - right.Length) > limit)
        {
            return limit + 1;
        }

        if (left.IsEmpty || right.IsEmpty)
        {
            return Math.Max(left.Length, right.Length);
        }

        var width = right.Length + 1;
        Span<int> rows = width <= RowOnStack ? stackalloc int[3 * RowOnStack] : new int[3 * width];
        return Band(left, right, limit, transpositions, rows[..width], rows.Slice(width, width), rows.Slice(2 * width, width));
    }

    // Only cells within `limit` of the diagonal can hold a distance within the limit; the rest count as limit + 1.
    private static int Band(
        ReadOnlySpan<char> left, ReadOnlySpan<char> right, int limit, bool transpositions, Span<int> before, Span<int> above, Span<int> row)
    {
        var beyond = limit + 1;
        before.Fill(beyond);
        for (var column = 0; column < above.Length; column++)
        {
            above[column] = Math.Min(column, beyond);
        }

        for (var line = 1; line <= left.Length; line++)
        {
            row.Fill(beyond);
            row[0] = Math.Min(line, beyond);
            var least = row[0];
            var last = Math.Min(right.Length, line + limit);
            for (var column = Math.Max(1, line - limit); column <= last; column++)
            {
                var edits = above[column - 1] + (left[line - 1] == right[column - 1] ? 0 : 1);
                edits = Math.Min(edits, Math.Min(above[column], row[column - 1]) + 1);
                if (transpositions && line > 1 && column > 1 && left[line - 1] == right[column - 2] && left[line - 2] == right[column - 1])
                {
                    edits = Math.Min(edits, before[column - 2] + 1);
                }

                row[column] = Math.Min(edits, beyond);
                least = Math.Min(least, edits);
            }

            // A transposition reaches back over this row, but whatever it could save there a deletion would have shown within the limit here.
            if (least > limit)
            {
                return beyond;
            }

            var spent = before;
            before = above;
            above = row;
            row = spent;
        }

        return above[^1];
    }
}
