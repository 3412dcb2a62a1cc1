using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.LookAlikes;

namespace PartMatch.Core.Tests.Listings;

/// <summary>A listing put together by hand: what the reader and the finder of numbers would give, without either of them.</summary>
internal sealed class WrittenPage
{
    private readonly List<Passage> _passages = [];
    private readonly List<FoundNumber> _found = [];
    private readonly LookAlikeFacts _facts;

    public WrittenPage(LookAlikeFacts facts) => _facts = facts;

    public ReadOffer Offer { get; set; } = new(
        new ReadPrice.Stated("£84.00", new Money("84.00", "GBP")), 1, ItemCondition.Used, Availability.InStock, null, null, null, null, null, OfferTerms.NotStated, AssemblyLevel.NotStated);

    public bool HasOffer { get; set; } = true;

    public string Words { get; set; } = "";

    /// <summary>A number as it stands in one place of the page.</summary>
    public WrittenPage With(
        string number, NumberRole role = NumberRole.Sold, string where = "title", PassagePlace place = PassagePlace.Title, NumberProperty? stated = null,
        NumberReading read = NumberReading.AsWritten, string? within = null)
    {
        var key = NumberKey.Of(number);
        _passages.Add(new Passage(place, where, number, place == PassagePlace.Title ? null : 0, stated));
        _found.Add(new FoundNumber(_passages.Count - 1, 0, number.Length, number, key, [.. _facts.Numbers.All.Where(known => known.Key == key)], read, within, role));
        return this;
    }

    public ListingAnswer Against(ListingQuestion question, ILookup<string, ContentsRow>? contents = null) => ListingMatch.Decide(
        new ListingFacts(_facts, contents ?? Array.Empty<ContentsRow>().ToLookup(row => row.Set)),
        question,
        new ReadListing(
            "A pump", "en", [new ReadProduct(StatementForm.Text, "A pump", null, [], ItemCondition.NotStated, HasOffer ? [Offer] : [], null)],
            [.. _passages, new Passage(PassagePlace.Text, "text", Words)], Words, []),
        new FoundNumbers(_found, 0));

    /// <summary>A family whose WA takes pump C, and whose WB takes pump E; the two look alike. B is the older number of C, D its newer one.</summary>
    public static LookAlikeFacts Pumps { get; } = MakePumps();

    public static NeededPlace PumpOf(string variant) => new(Pumps.Families[0], variant, "coolant-pump");

    private static LookAlikeFacts MakePumps()
    {
        Part[] parts =
        [
            WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12.0m),
            WrenFamily.Pump(WrenFamily.PumpE, "short", "anticlockwise", 12.0m),
            WrenFamily.Part("harl:H-26-1147-B", "coolant-pump", "Coolant pump"),
            WrenFamily.Part("harl:H-26-1147-F", "coolant-pump", "Coolant pump"),
            WrenFamily.Dowel("harl:H-10-2000-A", 8),
            WrenFamily.Part("harl:H-90-0001-A", "coolant-pump-kit", "Coolant pump kit"),
        ];
        var family = WrenFamily.Wren(
            parts,
            [
                WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC), WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpE),
                WrenFamily.Fitted("wa", "dowel", "harl:H-10-2000-A"),
            ],
            [
                WrenFamily.Replaced("harl:H-26-1147-B", WrenFamily.PumpC, SupersessionWay.One),
                WrenFamily.Replaced(WrenFamily.PumpC, "harl:H-26-1147-F", SupersessionWay.One),
            ]);
        return WrenFamily.Facts([family], parts, [new PartNumber("harl", "26-70-5", "26705", NumberSort.CastingMark, WrenFamily.PumpC), new PartNumber("harl", "26-70-5", "26705", NumberSort.CastingMark, WrenFamily.PumpE)]);
    }
}
