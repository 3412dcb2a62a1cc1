namespace PartMatch.Core.Tests.LookAlikes;

/// <summary>The distances straight from their recursive definitions, without bounds, bands or shortcuts: what the quick ones are held against.</summary>
internal static class EditDistanceByDefinition
{
    public static int OptimalStringAlignment(string left, string right) => Distance(left, right, left.Length, right.Length, transpositions: true, []);

    public static int Levenshtein(string left, string right) => Distance(left, right, left.Length, right.Length, transpositions: false, []);

    /// <summary>Folding as the look-alike classes are written down: 0 O Q D, 1 I L, 2 Z, 5 S, 8 B, 6 G.</summary>
    public static string Folded(string key) => string.Concat(key.Select(letter => letter switch
    {
        'O' or 'Q' or 'D' => '0',
        'I' or 'L' => '1',
        'Z' => '2',
        'S' => '5',
        'B' => '8',
        'G' => '6',
        _ => letter,
    }));

    private static int Distance(string left, string right, int i, int j, bool transpositions, Dictionary<(int, int), int> known)
    {
        if (i == 0 || j == 0)
        {
            return i + j;
        }

        if (known.TryGetValue((i, j), out var edits))
        {
            return edits;
        }

        int Shorter(int from, int to) => Distance(left, right, from, to, transpositions, known);
        edits = Math.Min(Math.Min(Shorter(i - 1, j) + 1, Shorter(i, j - 1) + 1), Shorter(i - 1, j - 1) + (left[i - 1] == right[j - 1] ? 0 : 1));
        if (transpositions && i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1])
        {
            edits = Math.Min(edits, Shorter(i - 2, j - 2) + 1);
        }

        return known[(i, j)] = edits;
    }
}
