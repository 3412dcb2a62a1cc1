namespace PartMatch.Core.Planning;

/// <summary>
/// What is to be decided, in whole numbers only: at each place one choice, from each offer so many packs, which jobs are done. It knows nothing of engines;
/// <c>Builds</c> writes it from a build and reads the solution back.
/// </summary>
/// <remarks>Everything is named by its index in these lists. Money is minor units of one currency, time whole days from the first.</remarks>
public sealed record PlanProblem(
    IReadOnlyList<PlanPlace> Places,
    IReadOnlyList<PlanProduct> Products,
    IReadOnlyList<PlanOffer> Offers,
    IReadOnlyList<PlanSeller> Sellers,
    IReadOnlyList<PlanJob> Jobs,
    IReadOnlyList<PlanDoubt> Doubts,
    IReadOnlyList<PlanRule> Rules)
{
    /// <summary>What everything may cost at most; null where there is no such limit.</summary>
    public PlanBound? MostCost { get; init; }

    /// <summary>Every ground that something here stands on.</summary>
    public IReadOnlySet<int> Grounds => Places.Select(place => place.Ground)
        .Concat(Offers.Select(offer => offer.Ground)).Concat(Rules.Select(rule => rule.Ground)).Append(MostCost?.Ground).Append(LastDay?.Ground)
        .OfType<int>().ToHashSet();

    /// <summary>The last day on which everything may be ready; null where there is no such limit.</summary>
    public PlanBound? LastDay { get; init; }

    /// <summary>Cost that is there whatever is chosen.</summary>
    public long FixedCost { get; init; }
}

/// <summary>A limit, and the ground it stands on.</summary>
public sealed record PlanBound(long Limit, int? Ground);

/// <summary>A place that holds exactly one of its choices.</summary>
/// <param name="Ground">That something of the list has to be there; when this ground is dropped the place may stay open. Null: it never may.</param>
public sealed record PlanPlace(string Name, IReadOnlyList<PlanChoice> Choices, int? Ground = null);

/// <summary>One thing that may be at a place.</summary>
/// <param name="Cost">Besides what is bought for it; may be negative (what is sold instead of kept).</param>
/// <param name="Uses">Pieces it takes.</param>
/// <param name="Risk">How unsure it is; 0 where it is proven.</param>
/// <param name="Kept">Pieces of what was there that stay; counts for "most kept".</param>
public sealed record PlanChoice(string Name, long Cost, IReadOnlyList<PlanPieces> Uses, long Risk = 0, int Kept = 0);

/// <summary>So many pieces of a product.</summary>
public sealed record PlanPieces(int Product, int Pieces);

/// <summary>What can be needed and bought.</summary>
/// <param name="InHand">Pieces that are there already and cost nothing.</param>
public sealed record PlanProduct(string Name, int InHand = 0);

/// <summary>Something for sale.</summary>
/// <param name="Price">Of one pack, with every charge that goes by the pack.</param>
/// <param name="Packs">At most so many.</param>
/// <param name="Holds">What one pack holds; a kit holds several products.</param>
/// <param name="OwnSending">Paid once for this offer; null: it travels in the seller's parcel.</param>
/// <param name="GoodsValue">Of one pack, in the unit of <see cref="PlanSeller.FreeFrom"/>.</param>
/// <param name="ArrivesOn">Day at the door.</param>
/// <param name="Risk">Of one pack bought or more: how easily it is the wrong thing.</param>
public sealed record PlanOffer(
    string Name, int Seller, long Price, int Packs, IReadOnlyList<PlanPieces> Holds, long? OwnSending = null, long GoodsValue = 0, int ArrivesOn = 0,
    long Risk = 0)
{
    /// <summary>Who forbids to buy it; it can be bought only where this ground is dropped. Null: nobody.</summary>
    public int? Ground { get; init; }

    /// <summary>Of two that come to the same the one of the lower rank is bought; none is below 0.</summary>
    public int Rank { get; init; }

    /// <summary>For how many pieces the seller charges a pack of it; at least 1.</summary>
    public int SentAs { get; init; } = 1;

    /// <summary>
    /// Jobs that, where they are done, are done before it is ordered. Where one of them cannot begin on the first day, it travels in a later parcel of its
    /// seller, for which the seller charges anew.
    /// </summary>
    public IReadOnlyList<int> OrderedAfter { get; init; } = [];
}

/// <summary>
/// Who sends one parcel with all that is ordered on the first day and has no sending of its own, and one with what is ordered later
/// (<see cref="PlanOffer.OrderedAfter"/>).
/// </summary>
/// <param name="ParcelCost">For the parcel.</param>
/// <param name="PieceCost">For each piece in it: see <see cref="PlanOffer.SentAs"/>.</param>
/// <param name="FreeFrom">Value of the goods in it from which sending costs nothing; null: never.</param>
public sealed record PlanSeller(string Name, long ParcelCost, long PieceCost = 0, long? FreeFrom = null);

/// <summary>Work on what is there. It starts when everything it needs has arrived and is not at another job.</summary>
/// <param name="NeedsPlaces">What is chosen there must have arrived first.</param>
/// <param name="HoldsPlaces">What is chosen there is away while it lasts: two jobs that hold one place do not overlap.</param>
/// <param name="AfterJobs">Jobs that, where they are done, must be done first.</param>
public sealed record PlanJob(
    string Name, long Cost, int Days, IReadOnlyList<int> NeedsPlaces, IReadOnlyList<int> HoldsPlaces, IReadOnlyList<int> AfterJobs)
{
    /// <summary>A place for which is ordered only when this job is done: what is bought for it then takes as many days more as it takes to come.</summary>
    public int? Orders { get; init; }
}

/// <summary>Something nobody knows that would have to be taken on trust.</summary>
/// <param name="Risk">What taking it on trust weighs.</param>
/// <param name="IsAdmitted">May it be?</param>
public sealed record PlanDoubt(string Name, long Risk, bool IsAdmitted);

/// <summary>If all of these hold, at least one of those does. No <c>Then</c>: they never hold together.</summary>
/// <param name="Ground">Who says so, for a conflict to name; null where it cannot be dropped.</param>
public sealed record PlanRule(IReadOnlyList<PlanFact> If, IReadOnlyList<PlanFact> Then, int? Ground = null);

/// <summary>Something that holds in a solution or does not: a closed set.</summary>
public abstract record PlanFact;

/// <summary>This choice is at this place.</summary>
public sealed record ChoiceMade(int Place, int Choice) : PlanFact;

/// <summary>This job is done.</summary>
public sealed record JobDone(int Job) : PlanFact;

/// <summary>This is taken on trust.</summary>
public sealed record DoubtTaken(int Doubt) : PlanFact;
