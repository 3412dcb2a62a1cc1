using PartMatch.Core.Catalogue;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.LookAlikes;

public sealed class NumberStoreTests
{
    [Fact]
    public void Own_and_further_numbers_come_with_what_they_stand_on()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        var store = new NumberStore(temp.Database);
        Assert.Equal(
            [
                ("B12", "marl", NumberSort.Service, "marl:B-1/2"), ("B13", "marl", NumberSort.Service, "marl:B-1/3"), ("B77", "orrin", NumberSort.Service, "orrin:B-77"),
                ("CAST9", "orrin", NumberSort.CastingMark, "marl:B-1/2"), ("CAST9", "orrin", NumberSort.CastingMark, "marl:B-1/3"),
                ("I1", "marl", NumberSort.Service, "marl:I-1"), ("S100", "marl", NumberSort.Service, "marl:S-100"), ("S100", "orrin", NumberSort.Supplier, "marl:I-1"),
            ],
            store.All().Select(known => (known.Number.Key, known.Number.Maker, known.Number.Sort, known.Number.Part)));
        var cast = store.All().First(known => known.Number.Key == "CAST9");
        Assert.Equal(("CAST 9", "bush", "Front bush"), (cast.Number.Written, cast.Kind, cast.Name));
        Assert.Equal(["lark-2"], cast.Families);
        Assert.Empty(store.All().Single(known => known.Number.Key == "B77").Families);
    }

    [Fact]
    public void Numbers_are_kept_until_the_base_changes()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        var store = new NumberStore(temp.Database);
        var before = store.All();
        Assert.Same(before, store.All());
        temp.Load(SampleBook.Family().Files);
        Assert.True(store.All().Count > before.Count);
    }
}
