using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Catalogue;

namespace PartMatch.Core.Tests.Builds;

/// <summary>
/// A build of an invented family with what is for sale, told fact by fact: the donor is a <c>lark</c>, it is to become a <c>swift</c>; money is in euros,
/// a price of 1000 stands for 10.00 EUR; what is said of no seller costs nothing to send and is there on the day of ordering.
/// </summary>
internal sealed record TestBuild(TestFamily Family)
{
    public static DateOnly Today { get; } = new(2026, 11, 2);

    public IReadOnlyList<Offer> Offers { get; init; } = [];

    public IReadOnlyList<Seller> Sellers { get; init; } = [];

    /// <summary>What kits hold.</summary>
    public IReadOnlyList<ContentsRow> Contents { get; init; } = [];

    public Build Build { get; init; } = new("try", "A try", "finch-9", new Donor("lark", null, null, null, []), "swift", "EUR");

    /// <summary>What was bought already.</summary>
    public BuildBought Bought { get; init; } = BuildBought.None;

    /// <summary>Examples of parts that were measured.</summary>
    public IReadOnlyList<Item> Items { get; init; } = [];

    public FitMemory Memory { get; } = new();

    /// <summary>The same with nothing remembered.</summary>
    public TestBuild Fresh() => new(Family) { Offers = Offers, Sellers = Sellers, Contents = Contents, Build = Build, Bought = Bought, Items = Items };

    public static Money Euros(long cents) => new Amount(cents, "EUR").ToMoney();

    public static string Typed(long cents) => Euros(cents).Amount;

    public TestBuild Sold(
        string number, long price, string by = "mill", int days = 0, int pack = 1, int? stock = null, ItemCondition condition = ItemCondition.New, string? kind = null) => this with
        {
            Offers =
            [
                .. Offers, new Offer(
                    "alder", $"o{Offers.Count}-{number.ToLowerInvariant()}", "alder", by, TestFamily.Id(number), number, kind, null, Euros(price), pack, stock, condition,
                    AssemblyLevel.NotStated, null, Today, days, days, null, null, new OfferReturns(Returnable.NotStated, null, null, FreightBack.NotStated, null), null),
            ],
        };

    /// <summary>What a kit holds.</summary>
    public TestBuild Holds(string kit, string number, int? pieces = 1, Certainty certainty = Certainty.Certain) =>
        this with { Contents = [.. Contents, new ContentsRow(TestFamily.Id(kit), TestFamily.Id(number), pieces, certainty, null)] };

    public TestBuild Seller(string code, long parcel = 0, long each = 0, long? freeFrom = null, decimal import = 0) => this with
    {
        Sellers =
        [
            .. Sellers, new Seller("alder", code, code, null, "EUR", Euros(parcel), Euros(each), freeFrom is { } from ? Euros(from) : null, import, null, null, null, null, null, null),
        ],
    };

    public TestBuild With(Func<Build, Build> change) => this with { Build = change(Build) };

    public TestBuild Donor(string position, PartState state, long? allowance = null, long? sellsFor = null) => With(build => build with
    {
        Donor = build.Donor with
        {
            States =
            [
                .. build.Donor.States,
                new DonorState(position, state, allowance is { } set ? Typed(set) : null, sellsFor is { } sold ? Typed(sold) : null, null, null),
            ],
        },
    });

    public TestBuild Wish(Wish wish) => With(build => build with { Wishes = [.. build.Wishes, wish] });

    public BuildFacts Facts(IOrder? order = null)
    {
        var rows = order ?? new InOrder();

        // The base hands these over in order: see BuyingFacts and ContentsReader.
        return new BuildFacts(
            Family.Facts(rows), new BuyingFacts([.. rows.Of(Offers).OrderBy(offer => offer.Code, StringComparer.Ordinal)], [.. rows.Of(Sellers).OrderBy(seller => seller.Code, StringComparer.Ordinal)]),
            rows.Of(Contents).OrderBy(row => row.Part, StringComparer.Ordinal).ToLookup(row => row.Set, StringComparer.Ordinal), Items)
        { Bought = Bought };
    }

    public BuildPlan Plan(PlanObjective objective = PlanObjective.Cheapest, IOrder? order = null) =>
        BuildPlanner.Plan(Facts(order), Build, 1, objective, Today, PlanEffort.Ordinary, Memory);

    public BuildConflict Conflict() => BuildConflicts.Find(Facts(), Build, 1, PlanObjective.Cheapest, Today, PlanEffort.Ordinary, Memory);

    public BuildWhyNot WhyNot(string position, string part, IOrder? order = null) =>
        BuildWhyNots.Ask(Facts(order), Build, 1, PlanObjective.Cheapest, Today, PlanEffort.Ordinary, Memory, position, part);

    public BuildWhy? Why(string position, IOrder? order = null) =>
        BuildWhys.Why(Facts(order), Build, 1, PlanObjective.Cheapest, Today, PlanEffort.Ordinary, Memory, position);

    public BuildFrontier Frontier(IOrder? order = null) => BuildFrontiers.ByDays(Facts(order), Build, 1, Today, PlanEffort.Ordinary, Memory);
}
