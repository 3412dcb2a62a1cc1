using System.Security.Cryptography;
using System.Text;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>Folded keys and the keys that are asked about, frozen: the same seed gives the same text on every machine.</summary>
/// <param name="Keys">Distinct, shorter ones first, each length in ordinal order.</param>
/// <param name="Asked">Half of them keys of the set, half with one or two errors.</param>
internal sealed record KeySet(string Name, ulong Seed, string[] Keys, string[] Asked)
{
    private const int Questions = 2_000;

    /// <summary>Letters that fold to themselves.</summary>
    public const string Letters = "ACEFHJKMNPRTUVWXY";

    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join('\n', Keys))));

    /// <summary>1,000,000 dense numbers, 12 shapes of another kind, or 5,000,000 dense ones.</summary>
    public static KeySet Of(string name) => name switch
    {
        "dense" => Make("dense", 20261127, dice => DenseKeys.Draw(dice, 1_000_000)),
        "dense5" => Make("dense5", 20261127, dice => DenseKeys.Draw(dice, 5_000_000)),
        "dense-tenth" => Make("dense-tenth", 20261127, dice => DenseKeys.Draw(dice, 100_000)),
        "shaped" => Make("shaped", 7141, dice => ShapedKeys.Draw(dice, 1_000_000)),
        "shaped-tenth" => Make("shaped-tenth", 7141, dice => ShapedKeys.Draw(dice, 100_000)),
        _ => throw new ArgumentException($"'{name}' is no key set: dense, dense5, dense-tenth, shaped or shaped-tenth.", nameof(name)),
    };

    private static KeySet Make(string name, ulong seed, Func<Dice, IEnumerable<string>> draw)
    {
        var dice = new Dice(seed);
        string[] keys = [.. draw(dice)];
        Array.Sort(keys, static (one, other) => one.Length != other.Length ? one.Length - other.Length : string.CompareOrdinal(one, other));
        return new KeySet(name, seed, keys, [.. Enumerable.Range(0, Questions).Select(index => Question(dice, keys, index % 2))]);
    }

    private static string Question(Dice dice, string[] keys, int spoilt)
    {
        var key = keys[dice.Below(keys.Length)];
        for (var errors = spoilt == 0 ? 0 : 1 + dice.Below(2); errors > 0; errors--)
        {
            var place = dice.Below(key.Length);
            key = dice.Below(4) switch
            {
                0 => key.Insert(place, $"{dice.Letter("0123456789" + Letters)}"),
                1 => key.Remove(place, 1),
                2 when place + 1 < key.Length => string.Concat(key.AsSpan(0, place), key.AsSpan(place + 1, 1), key.AsSpan(place, 1), key.AsSpan(place + 2)),
                _ => key.Remove(place, 1).Insert(place, $"{dice.Letter("0123456789" + Letters)}"),
            };
        }

        return key;
    }
}
