using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Tests.Catalogue;

namespace PartMatch.Core.Tests.Builds;

/// <summary>
/// Small builds drawn at random with everything that <see cref="AnyBuild"/> leaves out: grades to be measured, kits for several positions, packs, stock,
/// parts in hand, used parts, what may be taken on trust by position, wishes to be like another engine, rules and findings of one engine, traps.
/// </summary>
internal static class AnyRichBuild
{
    private static int Last => AnyFamily.Positions.Count - 1;

    public static Gen<TestBuild> Of => Gen.OneOf(Whatever, Bought);

    private static Gen<TestBuild> Whatever =>
        from family in Family
        from states in State.Array[Last + 1]
        from sellers in Sellers
        from offers in Gen.Select(
            Number, Gen.Select(Gen.Int[1, 9], Gen.Int[0, 1], Gen.Int[0, 6]), Gen.Select(Gen.Int[1, 2], Gen.Int[1, 2], Gen.Int[0, 2]),
            (number, price, pack) => (number, price, pack)).Array[1, 4]
        from kits in Gen.Select(
            Gen.Select(Number, Gen.Int[-1, 2]).Array[1, 3], Gen.Int[3, 12], Gen.Int[0, 1], Gen.Int[0, 6], (holds, price, seller, days) => (holds, price, seller, days)).Array[0, 2]
        from held in Number.Array[0, 2]
        from wishes in Wishes
        from asked in AnyBuild.Asked.Array[0, 2]
        select AnyBuild.Asking(Wish(Sell(AnyBuild.Told(family, states, sellers), offers, kits, held), wishes), asked);

    /// <summary>Something has to be bought at two positions, each part alone and in kits for both of them.</summary>
    private static Gen<TestBuild> Bought =>
        from family in Family
        from states in Gen.Select(State, State, State, (a, b, c) => new[] { (PartState.Damaged, a.Allowance, a.Sells), (PartState.Missing, b.Allowance, b.Sells), c })
        from sellers in Sellers
        from prices in Gen.Select(Gen.Int[1, 9], Gen.Int[0, 1], Gen.Int[0, 6]).Array[4]
        from kits in Gen.Select(Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[3, 12], Gen.Int[0, 1], Gen.Int[0, 6], (a, b, price, seller, days) =>
            (new[] { (AnyBuild.Number(0, a), 1), (AnyBuild.Number(1, b), 1), (AnyBuild.Number(2, a), 2) }, price, seller, days)).Array[1, 2]
        from wishes in Wishes
        from admits in Gen.Int[0, 3]
        select Wish(
            Sell(
                AnyBuild.Told(family, states, sellers).With(build => build with { AdmitNotKnown = admits > 0 }),
                [.. prices.Select((price, index) => (AnyBuild.Number(index % 2, index / 2), price, (1, 1, 1)))], kits, []),
            wishes);

    private static Gen<(PartState State, int Allowance, int Sells)> State =>
        Gen.Select(Gen.Enum<PartState>(), Gen.Int[-1, 3], Gen.Int[-2, 2], (state, allowance, sells) => (state, allowance, sells));

    private static Gen<(int Parcel, int Each, int Free, int Import)[]> Sellers =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[-6, 9], Gen.Int[0, 1], (parcel, each, free, import) => (parcel, each, free, import)).Array[2];

    private static Gen<(int Like, int Admits, int OnlyNew, int Keep)[]> Wishes =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 1], Gen.Int[0, 4], Gen.Int[0, 11], (like, admits, onlyNew, keep) => (like, admits, onlyNew, keep)).Array[Last + 1];

    public static bool IsGraded(TestBuild told, int position) => told.Facts().Family.Selects.Any(row => row.Position == AnyFamily.Positions[position]);

    private static Gen<string> Number =>
        Gen.Select(Gen.Int[0, Last], Gen.Int[0, AnyFamily.PartsOfAKind - 1], AnyBuild.Number);

    private static Gen<TestFamily> Family =>
        from family in Gen.OneOf(AnyFamily.Of(withSpans: false), AnyFamily.Of(withSpans: false), AnyFamily.Of())
        from grades in Gen.Select(Gen.Int[0, 2], Gen.Int[-2, 3], Gen.Int[-2, 3], (measured, lark, swift) => (measured, lark, swift)).Array[Last + 1]
        from rules in Gen.Select(Gen.Int[0, Last], Gen.Int[0, Last], Gen.Bool, (when, then, swift) => (when, then, swift)).Array[0, 2]
        from found in Gen.Select(
            Number, Gen.Enum<FindingOutcome>(), Gen.Enum<EvidenceGrade>(), Gen.Bool, Gen.Int[-1, 3],
            (number, outcome, grade, swift, with) => (number, outcome, grade, swift, with)).Array[0, 2]
        from traps in Gen.Select(Number, Number).Array[0, 1]
        from openings in Gen.Select(Gen.Int[0, Last], Gen.Int[0, Last], Gen.Int[0, 3], (position, first, engine) => (position, first, engine)).Array[0, 3]
        from renewals in Gen.Select(Gen.Int[0, Last], Gen.Int[0, Last], Gen.Int[0, 4], (opened, renewed, cure) => (opened, renewed, cure)).Array[0, 2]
        from bench in Gen.Select(Gen.Int[0, Last], Gen.Int[0, Last], Gen.Int[0, 4], (first, then, engine) => (first, then, engine)).Array[0, 3]
        select Bench(Open(Tell(family, grades, rules, found, traps), openings, renewals), bench);

    /// <summary>What goes in first, in the order in which openings close, so never in a ring with them; some of it on one engine only, some of it retracted.</summary>
    private static TestFamily Bench(TestFamily family, (int First, int Then, int Engine)[] rows)
    {
        foreach (var (first, then, engine) in rows.Where(row => row.First < row.Then).DistinctBy(row => (row.First, row.Then)))
        {
            family.GoesInFirst(
                AnyFamily.Positions[first], AnyFamily.Positions[then], engine == 4 ? BenchJoin.OnBench : null, engine == 0 ? TestFamily.Retracted() : null,
                engine switch { 1 => ["lark"], 2 => ["swift"], _ => [] });
        }

        return family;
    }

    /// <summary>What comes off first, never in a ring, and what is renewed; some of it on one engine only, some of it retracted.</summary>
    private static TestFamily Open(TestFamily family, (int Position, int First, int Engine)[] openings, (int Opened, int Renewed, int Cure)[] renewals)
    {
        foreach (var (position, first, engine) in openings.Where(row => row.Position < row.First).DistinctBy(row => (row.Position, row.First)))
        {
            family.OffFirst(
                AnyFamily.Positions[position], AnyFamily.Positions[first], engine == 0 ? TestFamily.Retracted() : null, engine switch { 1 => ["lark"], 2 => ["swift"], _ => [] });
        }

        foreach (var (opened, renewed, cure) in renewals.DistinctBy(row => (row.Opened, row.Renewed)))
        {
            decimal? hours = cure switch { 1 => 6, 2 => 24, 3 => 24.5m, _ => null };
            family.Renewed(AnyFamily.Positions[opened], AnyFamily.Positions[renewed], hours, evidence: cure == 4 ? TestFamily.Retracted() : null);
        }

        return family;
    }

    private static TestFamily Tell(
        TestFamily family, (int Measured, int Lark, int Swift)[] grades, (int When, int Then, bool Swift)[] rules,
        (string Number, FindingOutcome Outcome, EvidenceGrade Grade, bool Swift, int With)[] found, (string One, string Other)[] traps)
    {
        foreach (var (index, (measured, lark, swift)) in grades.Index())
        {
            var position = AnyFamily.Positions[index];
            Another(family, "lark", index, lark);
            Another(family, "swift", index, swift);
            if (measured == 0)
            {
                family.Chosen(position, $"{position}.bore", 9, 11, AnyBuild.Number(index, 0));
            }
        }

        foreach (var (index, (when, then, swift)) in rules.Index())
        {
            family.Companion(
                $"own-rule-{index}", $"{AnyFamily.Positions[when]}.colour", TestFamily.Word("red"), $"{AnyFamily.Positions[then]}.colour", TestFamily.Word("blue"),
                variants: [swift ? "swift" : "lark"]);
        }

        foreach (var (index, (number, outcome, grade, swift, with)) in found.Index())
        {
            var at = number[..1].ToLowerInvariant();
            var other = AnyFamily.Positions[(AnyFamily.Positions.ToList().IndexOf(at) + 1) % (Last + 1)];
            string[] beside = with < 0 ? [] : [$"{other}={other.ToUpperInvariant()}-{with}"];
            family.Found($"finding-{index}", number, outcome, TestFamily.By(grade), swift ? "swift" : "lark", at, null, beside);
        }

        foreach (var (one, other) in traps.Where(trap => trap.One != trap.Other))
        {
            family.Judged(one, other, PairJudgement.Trap);
        }

        return family.Kind("set", _ => { }).Part("KIT-0", "set").Part("KIT-1", "set");
    }

    /// <summary>Another part that the maker fitted as well: a grade, or one of which nobody knows when it came.</summary>
    private static void Another(TestFamily family, string variant, int position, int part)
    {
        var fitted = family.Facts().FitmentsAt(variant, AnyFamily.Positions[position]).Select(fitment => fitment.Part).ToList();
        if (part >= 0 && fitted is [{ } one] && one != TestFamily.Id(AnyBuild.Number(position, part)))
        {
            family.Fitted(variant, AnyFamily.Positions[position], AnyBuild.Number(position, part));
        }
    }

    private static TestBuild Sell(
        TestBuild told, (string Number, (int Price, int Seller, int Days) Price, (int Pack, int Stock, int Used) Pack)[] offers,
        ((string Number, int Pieces)[] Holds, int Price, int Seller, int Days)[] kits, string[] held)
    {
        foreach (var (number, (price, seller, days), (pack, stock, used)) in offers)
        {
            told = told.Sold(number, price * 1000, $"s{seller}", days, pack, stock, used == 0 ? ItemCondition.Used : ItemCondition.New);
        }

        foreach (var (index, (holds, price, seller, days)) in kits.Index())
        {
            told = told.Sold($"KIT-{index}", price * 1000, $"s{seller}", days, stock: 1);
            foreach (var (number, pieces) in holds.DistinctBy(row => row.Number))
            {
                told = told.Holds($"KIT-{index}", number, pieces < 0 ? null : pieces, pieces == 0 ? Certainty.Possible : Certainty.Certain);
            }
        }

        return told.With(build => build with { InHand = [.. held.Select(number => new Core.Builds.HeldPart(TestFamily.Id(number), 1, null))] });
    }

    private static TestBuild Wish(TestBuild told, (int Like, int Admits, int OnlyNew, int Keep)[] wishes) => wishes.Index().Aggregate(told, (all, wish) => all.Wish(
        new Wish(AnyFamily.Positions[wish.Index], null)
        {
            Like = wish.Item.Like switch { 0 => ["lark"], 1 => ["swift", "lark"], 2 => ["lark", "swift"], _ => [] },
            AdmitNotKnown = wish.Item.Admits == 0,
            OnlyNew = wish.Item.OnlyNew == 0,
            Keep = wish.Item.Keep == 0 ? KeepWish.Keep : KeepWish.Either,
        }));
}
