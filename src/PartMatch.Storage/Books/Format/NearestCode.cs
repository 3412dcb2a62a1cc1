namespace PartMatch.Storage.Books.Format;

/// <summary>Which known code was probably meant?</summary>
internal static class NearestCode
{
    /// <summary>The candidate that takes the fewest edits, the first in order among equals; null when none differs in less than a third of its letters.</summary>
    public static string? Find(string found, IEnumerable<string> candidates)
    {
        string? nearest = null;
        var fewest = int.MaxValue;
        foreach (var candidate in candidates.Where(candidate => Math.Abs(candidate.Length - found.Length) <= Most(candidate)))
        {
            var edits = Edits(found, candidate);
            if (edits < fewest && edits <= Most(candidate))
            {
                (nearest, fewest) = (candidate, edits);
            }
        }

        return nearest;
    }

    private static int Most(string candidate) => Math.Max(1, candidate.Length / 3);

    /// <summary>Insertions, deletions, substitutions and exchanges of neighbours that turn one text into the other.</summary>
    /// <remarks>The four edits of F. J. Damerau, Communications of the ACM 7 (1964), 171; each letter is edited once.</remarks>
    private static int Edits(string left, string right)
    {
        var (above2, above) = (new int[right.Length + 1], Enumerable.Range(0, right.Length + 1).ToArray());
        for (var i = 1; i <= left.Length; i++)
        {
            var row = new int[right.Length + 1];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var substituted = above[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                row[j] = Math.Min(substituted, Math.Min(above[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1])
                {
                    row[j] = Math.Min(row[j], above2[j - 2] + 1);
                }
            }

            (above2, above) = (above, row);
        }

        return above[^1];
    }
}
