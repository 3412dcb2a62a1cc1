namespace PartMatch.Benchmarks.Numbers;

/// <summary>
/// Numbers made otherwise, so that nothing is tuned to one set: twelve shapes of 6 to 20 characters with letters in front, in the middle or behind, a family of
/// 60 stems to each, and figures in steps of five with a check figure; one in a hundred up to 40 characters long.
/// </summary>
internal static class ShapedKeys
{
    private const int StemsOfShape = 60;

    // A: a letter; 9: a figure; S: the stem's own character; 5: nought or five; C: check figure, the sum of the figures modulo ten.
    private static readonly string[] _shapes =
    [
        "SS9999", "SSS9995", "S9A9A9A9", "99AASS95", "SSSS9999C", "A999999AA", "SS9A99A995", "SSSAAA9999", "9999999995C", "SSSSAA99995A", "SSSS999A999AA5", "SSSSSS99AA99995C",
    ];

    public static IEnumerable<string> Draw(Dice dice, int count)
    {
        string[] stems = [.. Enumerable.Range(0, _shapes.Length * StemsOfShape).Select(_ => string.Concat(Enumerable.Range(0, 6).Select(_ => dice.Letter("0123456789" + KeySet.Letters))))];
        var keys = new HashSet<string>(count);
        while (keys.Count < count)
        {
            var shape = dice.Below(_shapes.Length);
            var key = Write(dice, _shapes[shape], stems[(shape * StemsOfShape) + dice.Below(StemsOfShape)]);
            keys.Add(dice.Below(100) == 0 ? Lengthened(dice, key) : key);
        }

        return keys;
    }

    private static string Write(Dice dice, string shape, string stem)
    {
        var (text, sum) = ("", 0);
        for (var place = 0; place < shape.Length; place++)
        {
            var letter = shape[place] switch
            {
                'S' => stem[place % stem.Length],
                '5' => dice.Letter("05"),
                'C' => (char)('0' + (sum % 10)),
                'A' => dice.Letter(KeySet.Letters),
                _ => dice.Letter("0123456789"),
            };
            sum += char.IsDigit(letter) ? letter - '0' : 0;
            text += letter;
        }

        return text;
    }

    private static string Lengthened(Dice dice, string key)
    {
        var length = 17 + dice.Below(24);
        while (key.Length < length)
        {
            key += dice.Letter("0123456789" + KeySet.Letters);
        }

        return key;
    }
}
