using System.Globalization;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>
/// A maker's catalogue as dense as it gets: 800 prefixes of four or five digits, as many numbers to each as Zipf's law with s = 1 gives, bodies of five digits
/// counted up without a gap (a full group spills into the next), a letter and a digit behind three in ten; two in ten of free shapes of 7 to 12 characters.
/// </summary>
internal static class DenseKeys
{
    private const int Prefixes = 800;
    private const int BodiesOfGroup = 100_000;
    private const int Shapes = 200;

    public static IEnumerable<string> Draw(Dice dice, int count)
    {
        var keys = new HashSet<string>(count);
        var structured = count * 8 / 10;
        // A group holds no more than its bodies, so a set that is larger than 800 such groups could fill needs more of them.
        var prefixes = PrefixesOf(dice, Math.Max(Prefixes, Prefixes * (count / 1_000_000)));
        var harmonic = Enumerable.Range(1, prefixes.Count).Sum(rank => 1.0 / rank);
        var spilt = 0;
        for (var rank = 1; rank <= prefixes.Count; rank++)
        {
            var wanted = spilt + (int)Math.Round(structured / (rank * harmonic), MidpointRounding.ToEven);
            spilt = Math.Max(0, wanted - BodiesOfGroup);
            for (var body = 0; body < wanted - spilt; body++)
            {
                var suffix = dice.Below(10) < 3 ? $"{dice.Letter(KeySet.Letters)}{dice.Below(10)}" : "";
                keys.Add(string.Create(CultureInfo.InvariantCulture, $"{prefixes[rank - 1]}{body:00000}{suffix}"));
            }
        }

        string[] shapes = [.. Enumerable.Range(0, Shapes).Select(_ => ShapeOf(dice))];
        while (keys.Count < count)
        {
            keys.Add(string.Concat(shapes[dice.Below(Shapes)].Select(place => place == '9' ? dice.Letter("0123456789") : dice.Letter(KeySet.Letters))));
        }

        return keys;
    }

    private static List<string> PrefixesOf(Dice dice, int count)
    {
        var prefixes = new HashSet<string>();
        while (prefixes.Count < count)
        {
            var length = 4 + (prefixes.Count % 2);
            prefixes.Add(string.Concat(Enumerable.Range(0, length).Select(_ => dice.Letter("0123456789"))));
        }

        return [.. prefixes];
    }

    // Mostly digits, a letter here and there.
    private static string ShapeOf(Dice dice) => string.Concat(Enumerable.Range(0, 7 + dice.Below(6)).Select(_ => dice.Letter("9999A")));
}
