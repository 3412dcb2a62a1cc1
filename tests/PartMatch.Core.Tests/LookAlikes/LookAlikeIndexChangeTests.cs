using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class LookAlikeIndexChangeTests
{
    // Parts a to f, each with some numbers; a change gives a part other numbers, or none.
    private static readonly Gen<(string Part, string Key)[]> _numbers =
        Gen.Select(Gen.Char["abcdef"].Select(part => part.ToString()), Gen.String[Gen.Char["0123"], 4, 7]).Array[0, 20];

    [Fact]
    public void An_index_with_changes_finds_what_one_built_anew_finds() =>
        Gen.Select(_numbers, Gen.Select(Gen.Char["abcdef"].Select(part => part.ToString()), Gen.String[Gen.Char["0123"], 4, 7].Array[0, 4]).Array[0, 6], Gen.String[Gen.Char["0123"], 4, 7])
            .Sample((numbers, changes, asked) =>
            {
                var index = new LookAlikeIndex(numbers.Select(Number));
                var now = numbers.ToList();
                foreach (var (part, keys) in changes)
                {
                    now = [.. now.Where(number => number.Part != part), .. keys.Select(key => (part, key))];
                    index = index.With([part], keys.Select(key => Number((part, key))));
                }

                var anew = new LookAlikeIndex(now.Select(Number));
                return anew.Count == index.Count && anew.All.ToHashSet().SetEquals(index.All)
                    && anew.Find(asked).Select(Told).SequenceEqual(index.Find(asked).Select(Told));
            });

    [Fact]
    public void The_index_that_was_changed_stays_as_it_was()
    {
        var before = new LookAlikeIndex([Number(("a", "123456"))]);
        var after = before.With(["a", "b"], [Number(("b", "123457"))]);
        Assert.Equal("a", Assert.Single(before.Find("123456")).Number.Part);
        Assert.Equal("b", Assert.Single(after.Find("123456")).Number.Part);
        Assert.Equal((0, 3), (before.Changed, after.Changed)); // two parts and one number
    }

    private static (string, string, int, double) Told(NearNumber near) => (near.Number.Part, near.Number.Key, near.FoldedEdits, near.Cost);

    private static PartNumber Number((string Part, string Key) one) => new("harl", one.Key, one.Key, NumberSort.Service, one.Part);
}
