using PartMatch.Core.Listings;

namespace PartMatch.Core.Builds;

/// <summary>One conversion as the builder states it: the donor, what it is to become, what is wished for, and what it may cost. It is one document, also as a file.</summary>
/// <remarks>Quantities, dates and rates stand as typed; what of them cannot be read, or is not known to the base, is told before anything is planned.</remarks>
/// <param name="Code">A name in kebab-case, unique in the base.</param>
/// <param name="Family">The family of the donor.</param>
/// <param name="Target">Variant it is to become; null: it stays what the donor is.</param>
/// <param name="Currency">ISO 4217; everything is reckoned in it.</param>
public sealed record Build(string Code, string Title, string Family, Donor Donor, string? Target, string Currency)
{
    public string? Note { get; init; }

    /// <summary>What the engine is to do; null where nothing beyond the target is asked.</summary>
    public BuildGoal? Goal { get; init; }

    /// <summary>Engines that could be the donor instead, to be ranked beside it.</summary>
    public IReadOnlyList<DonorOffer> Donors { get; init; } = [];

    /// <summary>What is asked of positions, most particular last: a later one adds to an earlier.</summary>
    public IReadOnlyList<Wish> Wishes { get; init; } = [];

    /// <summary>May what nobody knows be taken on trust anywhere? A position can say so for itself.</summary>
    public bool AdmitNotKnown { get; init; }

    public IReadOnlyList<HeldPart> InHand { get; init; } = [];

    /// <summary>Work to be done besides what the parts ask for.</summary>
    public IReadOnlyList<AskedWork> Works { get; init; } = [];

    /// <summary>Sellers not to buy from.</summary>
    public IReadOnlyList<string> RefusedSellers { get; init; } = [];

    public IReadOnlyList<Rate> Rates { get; init; } = [];

    /// <summary>What everything may cost at most, in <see cref="Currency"/>.</summary>
    public string? Budget { get; init; }

    /// <summary>The day on which everything has to be there and worked, <c>2026-12-24</c>.</summary>
    public string? NeededBy { get; init; }

    /// <summary>The day on which is ordered; the day of the question when left out.</summary>
    public string? StartOn { get; init; }

    /// <summary>Offers seen longer ago are left out; null: none is for its age.</summary>
    public int? OffersAtMostDaysOld { get; init; }

    /// <summary>Days that an offer takes whose seller says nothing of it; null: such an offer is left out.</summary>
    public int? DaysWhereNotSaid { get; init; }

    /// <summary>Sending of an offer of which nothing is known, in <see cref="Currency"/>; null: such an offer is left out.</summary>
    public string? SendingWhereNotSaid { get; init; }

    /// <summary>Import charge in percent where the seller's is not known; null: such an offer is left out.</summary>
    public decimal? ImportPercentWhereNotSaid { get; init; }
}

/// <summary>The engine that is there.</summary>
/// <param name="Built">Build date, <c>2017-04</c> or <c>2017-04-23</c>.</param>
/// <param name="Price">What it cost or costs; null leaves it out of the sum.</param>
/// <param name="States">What is known of its positions; one that is not named is there and was not inspected.</param>
public sealed record Donor(string Variant, string? Built, long? Serial, string? Price, IReadOnlyList<DonorState> States)
{
    /// <summary>Of price and freight; null: the build's.</summary>
    public string? Currency { get; init; }

    /// <summary>To have it at the bench, fetching included; null where that is not known, 0 where it costs nothing.</summary>
    public string? Freight { get; init; }

    /// <summary>How much of an engine is sold.</summary>
    public AssemblyLevel? Level { get; init; }

    /// <summary>What comes with it besides what its maker fitted: it is in hand then.</summary>
    public IReadOnlyList<HeldPart> ComesWith { get; init; } = [];

    /// <summary>The day on which it was seen, or the offer of it.</summary>
    public string? SeenOn { get; init; }

    public string? Note { get; init; }
}

/// <summary>An engine that could be the donor.</summary>
/// <param name="Code">A name in kebab-case, unique among the donors of the build.</param>
/// <param name="Name">In your words: whose it is, where it stands.</param>
public sealed record DonorOffer(string Code, string Name, Donor Donor);

/// <summary>What is known of one position of the donor.</summary>
/// <param name="Allowance">Set aside for a part that is kept and was not inspected, in the build's currency.</param>
/// <param name="SellsFor">What the donor's part brings where it is not kept, in the build's currency.</param>
/// <param name="Item">The item that it is, as <c>book/item</c>: its readings speak for it.</param>
public sealed record DonorState(string Position, PartState State, string? Allowance, string? SellsFor, string? Item, string? Note);

/// <summary>How a part of the donor was found.</summary>
public enum PartState
{
    /// <summary>There, and nobody has looked at it: it can be kept and is never counted as good.</summary>
    NotInspected,
    Good,
    Damaged,
    Missing,
}

/// <summary>What the engine is to do. Each as typed, with its unit.</summary>
/// <param name="Power">At the crank; with <paramref name="Speed"/> it sizes the injectors.</param>
/// <param name="Boost">Over ambient.</param>
/// <param name="Pressure">Of the fuel, as the supply takes it.</param>
/// <param name="Supply">As in the injector question.</param>
/// <param name="Fuel">Code of a fuel.</param>
public sealed record BuildGoal(string? Power, string? Speed, string? Boost, string? Pressure, string? Supply, string? Duty, string? Fuel);

/// <summary>What is asked of one position, or of every position of a group; exactly one of the two is named.</summary>
public sealed record Wish(string? Position, string? Group)
{
    /// <summary>Variants whose way of running is as wished there; the target's where none is named.</summary>
    public IReadOnlyList<string> Like { get; init; } = [];

    /// <summary>Only these may be there: the user chose them, so each runs as wished by itself; <c>none</c> leaves it empty.</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>These may not be there.</summary>
    public IReadOnlyList<string> Refuse { get; init; } = [];

    /// <summary>What of the donor's own there.</summary>
    public KeepWish Keep { get; init; }

    /// <summary>Only new parts are bought there.</summary>
    public bool OnlyNew { get; init; }

    /// <summary>What nobody knows may be taken on trust there.</summary>
    public bool AdmitNotKnown { get; init; }

    public string? Note { get; init; }
}

/// <summary>What is wished of the donor's own part.</summary>
public enum KeepWish
{
    /// <summary>Nothing.</summary>
    Either,

    /// <summary>It stays.</summary>
    Keep,

    /// <summary>It stays wherever any plan keeps it, whatever that costs; the plan tells what it would cost without the wish.</summary>
    KeepIfPossible,

    /// <summary>It goes: the same number may come in its place, new.</summary>
    Renew,
}

/// <summary>Pieces that are there already, besides the donor.</summary>
public sealed record HeldPart(string Part, int Pieces, string? Note);

/// <summary>Work to be done whatever the parts ask for.</summary>
/// <param name="WhenNew">Only where what sits at this position is not the donor's own; null: in any case.</param>
public sealed record AskedWork(string Work, string? WhenNew, string? Note);

/// <summary>What one unit of another currency costs in the build's.</summary>
/// <param name="Is">Decimal text: <c>1.1700</c>.</param>
/// <param name="From">Where it was read and when.</param>
public sealed record Rate(string Currency, string Is, string? From);
