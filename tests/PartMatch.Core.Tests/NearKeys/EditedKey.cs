using CsCheck;

namespace PartMatch.Core.Tests.NearKeys;

/// <summary>A key with errors put into it: an added, lost, other or swapped character each.</summary>
internal static class EditedKey
{
    public static Gen<(int Kind, int Place, char Letter)[]> Changes(string letters, int most) =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 39], Gen.Char[letters]).Array[0, most];

    public static string Of(string key, IEnumerable<(int Kind, int Place, char Letter)> changes) => changes.Aggregate(key, Changed);

    private static string Changed(string key, (int Kind, int Place, char Letter) change)
    {
        var place = key.Length == 0 ? 0 : change.Place % key.Length;
        return change.Kind switch
        {
            0 => key.Insert(place, change.Letter.ToString()),
            1 when key.Length > 0 => key.Remove(place, 1),
            2 when key.Length > 0 => key.Remove(place, 1).Insert(place, change.Letter.ToString()),
            3 when place + 1 < key.Length => string.Concat(key.AsSpan(0, place), key.AsSpan(place + 1, 1), key.AsSpan(place, 1), key.AsSpan(place + 2)),
            _ => key,
        };
    }
}
