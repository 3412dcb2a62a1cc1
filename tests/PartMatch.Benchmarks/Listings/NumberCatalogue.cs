using System.Globalization;
using System.Text;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Benchmarks.Listings;

/// <summary>Invented numbers and an invented page, the same in every run.</summary>
internal static class NumberCatalogue
{
    private const string Letters = "ABCDEFGHJKLMNPRSTVWXY";

    private static readonly string[] _words =
    [
        "the", "pump", "is", "in", "good", "condition", "and", "was", "taken", "from", "a", "running", "engine", "with", "gasket", "shaft", "housing", "fits", "replaces", "for",
        "not", "tested", "shipping", "within", "days", "returns", "accepted", "Dichtung", "passend", "Wasserpumpe", "moteur", "neuve", "2019", "12", "V", "9.6", "mm", "45.00",
    ];

    /// <summary>Four shapes in equal shares: P-26-1147-C, QX41-2075-A, 77-2041-5 and 0930150123.</summary>
    public static PartNumber[] Numbers(int count)
    {
        var random = new Random(1);
        var numbers = new PartNumber[count];
        for (var index = 0; index < count; index++)
        {
            var written = string.Create(CultureInfo.InvariantCulture, $"{(index % 4) switch
            {
                0 => $"{Letter(random)}-{random.Next(10, 100)}-{random.Next(1000, 10_000)}-{Letter(random)}",
                1 => $"{Letter(random)}{Letter(random)}{random.Next(10, 100)}-{random.Next(1000, 10_000)}-{Letter(random)}",
                2 => $"{random.Next(10, 100)}-{random.Next(1000, 10_000)}-{random.Next(0, 10)}{Letter(random)}",
                _ => $"{random.Next(100_000, 1_000_000)}{random.Next(1000, 10_000)}",
            }}");
            numbers[index] = new PartNumber("pellworth", written, NumberKey.Of(written), NumberSort.Service, "pellworth:" + written);
        }

        return numbers;
    }

    /// <summary>Passages of about 400 characters; every fifteenth word a known number, every fortieth an unknown one.</summary>
    public static Passage[] Page(PartNumber[] numbers, int characters)
    {
        var random = new Random(2);
        var passages = new List<Passage>();
        for (var left = characters; left > 0;)
        {
            var text = new StringBuilder();
            while (text.Length < Math.Min(400, left))
            {
                text.Append(random.Next(40) switch
                {
                    0 => $"ZX{random.Next(10, 100)}-{random.Next(1000, 10_000)}-Q",
                    1 or 2 => numbers[random.Next(numbers.Length)].Written,
                    3 => numbers[random.Next(numbers.Length)].Written.Replace('-', ' '),
                    _ => _words[random.Next(_words.Length)],
                }).Append(random.Next(8) == 0 ? ", " : " ");
            }

            left -= text.Length;
            passages.Add(new Passage(PassagePlace.Text, "text", text.ToString()));
        }

        return [.. passages];
    }

    private static char Letter(Random random) => Letters[random.Next(Letters.Length)];
}
