namespace PartMatch.Storage.Books.Format;

/// <summary>Which known code was probably meant?</summary>
internal static class NearestCode
{
    /// <summary>The candidate that takes the fewest single-letter edits, the first in order among equals; null when none is nearer than half its length.</summary>
    public static string? Find(string found, IEnumerable<string> candidates)
    {
        string? nearest = null;
        var fewest = int.MaxValue;
        foreach (var candidate in candidates.Where(candidate => Math.Abs(candidate.Length - found.Length) <= candidate.Length / 2))
        {
            var edits = Edits(found, candidate);
            if (edits < fewest && edits <= candidate.Length / 2)
            {
                (nearest, fewest) = (candidate, edits);
            }
        }

        return nearest;
    }

    /// <summary>Insertions, deletions and substitutions that turn one text into the other.</summary>
    /// <remarks>Levenshtein distance by rows; V. I. Levenshtein, Soviet Physics Doklady 10 (1966), 707.</remarks>
    private static int Edits(string left, string right)
    {
        var above = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var row = new int[right.Length + 1];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var substituted = above[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                row[j] = Math.Min(substituted, Math.Min(above[j], row[j - 1]) + 1);
            }

            above = row;
        }

        return above[^1];
    }
}
