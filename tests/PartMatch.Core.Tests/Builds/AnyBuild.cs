using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Tests.Catalogue;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Small builds drawn at random on <see cref="AnyFamily"/>: three positions, up to five offers of one piece by two sellers, a donor in any state.</summary>
internal static class AnyBuild
{
    private const int MostOffers = 5;

    /// <param name="wishes">May something be asked for that no plan may hold?</param>
    public static Gen<TestBuild> Of(bool wishes = false) =>
        from family in AnyFamily.Of(withSpans: false)
        from states in Gen.Select(Gen.Enum<PartState>(), Gen.Int[-1, 3], Gen.Int[-2, 2], (state, allowance, sells) => (state, allowance, sells)).Array[AnyFamily.Positions.Count]
        from offers in Offer.Array[1, MostOffers]
        from sellers in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[-6, 9], Gen.Int[0, 1], (parcel, each, free, import) => (parcel, each, free, import)).Array[2]
        from admits in Gen.Int[0, 3]
        from asked in wishes ? Asked.Array[1, 4] : Gen.Const(Array.Empty<(int, int, int)>())
        select Tell(family, states, offers, sellers, admits > 0, asked);

    /// <summary>The same where something has to be bought at two positions: three offers at each, of two parts, by price and days.</summary>
    public static Gen<TestBuild> Bought =>
        from family in AnyFamily.Of(withSpans: false)
        from offers in Gen.Select(Gen.Int[0, 1], Gen.Int[1, 9], Gen.Int[0, 1], Gen.Int[0, 6], (part, price, seller, days) => (part, price, seller, days)).Array[6]
        from sellers in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[-6, 9], Gen.Int[0, 1], (parcel, each, free, import) => (parcel, each, free, import)).Array[2]
        from admits in Gen.Int[0, 5]
        select Tell(
            family, [(PartState.Damaged, -1, -1), (PartState.Missing, -1, -1), (PartState.NotInspected, 2, 1)],
            [.. offers.Select((offer, index) => (index / 3, offer.part, offer.price, offer.seller, offer.days))], sellers, admits > 0, [(2, 0, 3), (2, 1, 3)]);

    public static string Number(int position, int part) => $"{AnyFamily.Positions[position].ToUpperInvariant()}-{part}";

    private static Gen<(int Position, int Part, int Price, int Seller, int Days)> Offer => Gen.Select(
        Gen.Int[0, AnyFamily.Positions.Count - 1], Gen.Int[0, AnyFamily.PartsOfAKind - 1], Gen.Int[1, 9], Gen.Int[0, 1], Gen.Int[0, 6],
        (position, part, price, seller, days) => (position, part, price, seller, days));

    /// <summary>What, where, how much.</summary>
    public static Gen<(int What, int Position, int Much)> Asked =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, AnyFamily.Positions.Count - 1], Gen.Int[0, 8], (what, position, much) => (what, position, much));

    /// <summary>The donor in these states, and these sellers.</summary>
    public static TestBuild Told(
        TestFamily family, (PartState State, int Allowance, int Sells)[] states, (int Parcel, int Each, int Free, int Import)[] sellers)
    {
        var told = new TestBuild(family);
        foreach (var (index, (parcel, each, free, import)) in sellers.Index())
        {
            told = told.Seller($"s{index}", parcel * 100, each * 100, free < 1 ? null : free * 1000, import * 10);
        }

        foreach (var (index, (state, allowance, sells)) in states.Index())
        {
            told = told.Donor(AnyFamily.Positions[index], state, allowance < 0 ? null : allowance * 100, sells < 0 ? null : sells * 100);
        }

        return told;
    }

    public static TestBuild Asking(TestBuild told, (int What, int Position, int Much)[] asked) => asked.Aggregate(told, Ask);

    private static TestBuild Tell(
        TestFamily family, (PartState State, int Allowance, int Sells)[] states, (int Position, int Part, int Price, int Seller, int Days)[] offers,
        (int Parcel, int Each, int Free, int Import)[] sellers, bool admits, (int What, int Position, int Much)[] asked)
    {
        var told = Told(family, states, sellers).With(build => build with { AdmitNotKnown = admits });
        return Asking(offers.Aggregate(told, (all, offer) => all.Sold(Number(offer.Position, offer.Part), offer.Price * 1000, $"s{offer.Seller}", offer.Days, stock: 1)), asked);
    }

    private static TestBuild Ask(TestBuild told, (int What, int Position, int Much) asked)
    {
        var position = AnyFamily.Positions[asked.Position];
        return asked.What switch
        {
            0 => told.With(build => build with { Budget = TestBuild.Typed(asked.Much * 500) }),
            1 => told.With(build => build with { NeededBy = TestBuild.Today.AddDays(asked.Much).ToString("yyyy-MM-dd", null) }),
            2 => told.Wish(new Wish(position, null) { Refuse = [TestFamily.Id(Number(asked.Position, asked.Much % AnyFamily.PartsOfAKind)), Part.None] }),
            3 => told.Wish(new Wish(position, null) { Keep = KeepWish.Renew }),
            4 => told.With(build => build with { RefusedSellers = [$"s{asked.Much % 2}"] }),
            _ => told.Wish(new Wish(position, null) { Refuse = [TestFamily.Id(Number(asked.Position, asked.Much % AnyFamily.PartsOfAKind))] }),
        };
    }
}
