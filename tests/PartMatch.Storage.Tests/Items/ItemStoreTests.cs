using PartMatch.Core.Catalogue;
using PartMatch.Core.Photos;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Storage.History;
using PartMatch.Storage.Items;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Editing;
using Xunit;

namespace PartMatch.Storage.Tests.Items;

public sealed class ItemStoreTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly ItemStore _items;

    public ItemStoreTests() => _items = new ItemStore(_base.Base.Database);

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Item_comes_with_its_readings_works_and_photographs()
    {
        Assert.Equal(["it-0001", "it-0002"], _items.List(EditBase.Book).Select(item => item.Code));
        var item = _items.Find(EditBase.Book, "it-0001")!; // it is in the sample
        Assert.Equal(("marl:S-100", ItemOrigin.Donor, "turned once by hand", "ev-0005"), (item.Part, item.Origin, item.Condition, item.Evidence?.Code));
        Assert.Equal(["nose", "outer"], item.Readings.Select(reading => reading.Feature));
        var outer = (QuantityReading)item.Readings[1].Reading;
        Assert.Equal((0.024985m, 0.000004m, null, "outside micrometer 25-50"), (outer.Value, outer.Uncertainty, outer.Minus, item.Readings[1].Instrument));
        Assert.Equal(("ream-bush", "2026-05-04"), (Assert.Single(item.WorksDone).Work, item.WorksDone[0].DoneOn));
        Assert.Equal(("ph-0001", ImageName.Of(SampleBook.Picture), "the tang"), Assert.Single(_items.Photos(EditBase.Book, "it-0001")) is var photo ? (photo.Photo, photo.Image, photo.Caption) : default);
        Assert.Null(_items.Find(EditBase.Book, "it-0009"));
    }

    [Fact]
    public void Reading_changes_its_part_only_when_a_person_promotes_it()
    {
        var families = new FamilyStore(_base.Base.Database);
        IReadOnlyList<string> Values() =>
            [.. families.FindFamily(EditBase.Book)!.GetPart("marl:S-100").Values.Where(value => value.Feature == "outer").Select(value => $"{value.Reading.Text} {value.Evidence?.Code}")];

        Assert.Equal(["-0.5 mm ev-0001"], Values());
        var promotion = new PromotionStore(_base.Edits, _base.Rows, _items);
        var outcome = Promote(promotion, "outer");
        Assert.True(outcome is PromotionOutcome.Edited { Outcome: EditOutcome.Done }, outcome.ToString());

        Assert.Equal(["-0.5 mm ev-0001", "24.985 mm promoted-it-0001-outer"], Values());
        var source = families.FindFamily(EditBase.Book)!.GetPart("marl:S-100").Values.Single(value => value.Evidence?.Code == "promoted-it-0001-outer").Evidence!;
        Assert.Equal(
            (EvidenceGrade.Measured, "Ada", "2026-05-03", "ev-0005", SpeaksOf.Number), (source.Grade, source.Author, source.Date, source.DerivedFrom, source.Details?.SpeaksOf));
        Assert.Equal(Act.Promote, _base.History.List(new(null, null, null, 1, null)).Changes[0].Act);

        // Once is enough, and what was not read cannot be promoted.
        Assert.IsType<EditOutcome.Faulty>(((PromotionOutcome.Edited)Promote(promotion, "outer")).Outcome);
        Assert.IsType<PromotionOutcome.NoReading>(Promote(promotion, "lobes"));
    }

    // ev-0005 is a measurement; somebody finds out that the numbers were only told.
    [Theory]
    [InlineData("reported", EvidenceGrade.Reported)]
    [InlineData("inferred", EvidenceGrade.Inferred)]
    [InlineData("trial-fitted", EvidenceGrade.Measured)]
    public void Reading_that_was_only_told_is_promoted_as_told(string grade, EvidenceGrade expected)
    {
        _base.Done(_base.Change("evidence", "ev-0005", $"grade={grade}"));

        Assert.True(Promote(new PromotionStore(_base.Edits, _base.Rows, _items), "outer") is PromotionOutcome.Edited { Outcome: EditOutcome.Done });

        var part = new FamilyStore(_base.Base.Database).FindFamily(EditBase.Book)!.GetPart("marl:S-100");
        Assert.Equal(expected, part.Values.Single(value => value.Evidence?.Code == "promoted-it-0001-outer").Evidence?.Grade);
    }

    // In one kind the feature is one word, in the other a set of words: "petrol" is both.
    [Fact]
    public void Item_that_turns_out_to_be_another_part_has_its_readings_read_as_that_part_has_them()
    {
        _base.ApplyTo("shared", EditBase.Add("features", "kind=bush", "feature=fuel", "name=made for", "type=choices", "choices=petrol"));
        _base.Done(EditBase.Add("items", "item=it-0003", "part=marl:I-1"), EditBase.Add("readings", "item=it-0003", "feature=fuel", "value=petrol"));
        Assert.IsType<ChoiceReading>(_items.Find(EditBase.Book, "it-0003")!.Readings[0].Reading);

        _base.Done(_base.Change("items", "it-0003", "part=marl:B-1/2"));

        Assert.IsType<ChoicesReading>(_items.Find(EditBase.Book, "it-0003")!.Readings[0].Reading);
    }

    private static PromotionOutcome Promote(PromotionStore promotion, string feature) =>
        promotion.Promote(EditBase.Book, "it-0001", feature, new ChangeNote("Ada", "two readings agree"), TestContext.Current.CancellationToken);
}
