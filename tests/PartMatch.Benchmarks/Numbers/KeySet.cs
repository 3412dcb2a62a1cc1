using System.Security.Cryptography;
using System.Text;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>Folded keys and the keys that are asked about, frozen: the same seed gives the same text on every machine.</summary>
/// <param name="Keys">Distinct, shorter ones first, each length in ordinal order.</param>
/// <param name="Asked">Half of them keys of the set, half with one or two errors.</param>
internal sealed record KeySet(string Name, ulong Seed, string[] Keys, string[] Asked)
{
    private const int Questions = 2_000;

    /// <summary>How many keys each set has, and their digest. A set that has become another one would be compared with figures that are not its own.</summary>
    private static readonly Dictionary<string, (int Count, string Sha256)> _frozen = new()
    {
        ["dense"] = (1_000_000, "51865acf759935835e1b370dc1ff6d4fc21e07e5572758190a1d7cc93e85e3ca"),
        ["dense5"] = (5_000_000, "d88ca7b1eb596501a2e173f49b0c940c7c531d076d9a370c2cfbbd5fd815f716"),
        ["dense-tenth"] = (100_000, "a12fea12bf844357024da67410f99c33798657e7a6d73fb5b6cdfc6d21380507"),
        ["shaped"] = (1_000_000, "49b0d920c2153bed8ba97f2311913aeddad9640bed94a59c49c5687c1a739414"),
        ["shaped-tenth"] = (100_000, "630cbff8fdb1a09f3e08b9c8d3a9c16aa898672e55a0fa9b670f38743da974c9"),
    };

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
        var set = new KeySet(name, seed, keys, [.. Enumerable.Range(0, Questions).Select(index => Question(dice, keys, index % 2))]);
        return (set.Keys.Length, set.Sha256) == _frozen[name] ? set
            : throw new InvalidOperationException($"The key set {name} has {set.Keys.Length} keys of SHA-256 {set.Sha256}, expected {_frozen[name]}: it is another one.");
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
