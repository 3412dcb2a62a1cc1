using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What is done at a position.</summary>
public enum LineAction
{
    Keep,
    KeepWithWork,
    Replace,
    Add,
    LeaveOff,
    Renew,
}

/// <summary>The plan of a build: a line for each position, what to buy, what it costs and when it is there.</summary>
/// <remarks>Also the answer where there is no plan: then the lists are empty and the text says so; <see cref="BuildConflict"/> tells why.</remarks>
public sealed record BuildPlan
{
    public required PlanAsked Asked { get; init; }

    public required PlanStatus Status { get; init; }

    /// <summary>"No plan is cheaper: 1131.00 EUR, there on 2026-12-07", in one breath.</summary>
    public required string HeadlineText { get; init; }

    /// <summary>Null where nothing was found.</summary>
    public PlanCost? Cost { get; init; }

    public int? Days { get; init; }

    public DateOnly? ReadyOn { get; init; }

    /// <summary>How much better a plan could still be in what counts first; null where it is proven.</summary>
    public string? Gap { get; init; }

    /// <summary>How sure the weakest line is; null where nothing was found.</summary>
    public Sureness? Sureness { get; init; }

    /// <summary>Ordered by group, then position, as the family lists them.</summary>
    public IReadOnlyList<BuildLine> Lines { get; init; } = [];

    /// <summary>By seller, what to order there.</summary>
    public IReadOnlyList<SellerBasket> Baskets { get; init; } = [];

    /// <summary>What was bought already, by order and line, and what the plan makes of it.</summary>
    public IReadOnlyList<BoughtInPlan> Bought { get; init; } = [];

    /// <summary>In the order in which it starts.</summary>
    public IReadOnlyList<PlannedWork> Works { get; init; } = [];

    /// <summary>What was bought or comes with packs and kits and is not used.</summary>
    public IReadOnlyList<LeftOver> LeftOver { get; init; } = [];

    /// <summary>What is taken on trust, and what that saves.</summary>
    public IReadOnlyList<TakenOnTrust> OnTrust { get; init; } = [];

    /// <summary>Offers that were not weighed, and why: grouped, in words.</summary>
    public IReadOnlyList<string> NotWeighed { get; init; } = [];

    /// <summary>What to look at before money is spent.</summary>
    public IReadOnlyList<string> Flags { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public string Permalink { get; init; } = "";
}

/// <param name="Version">Of the build that was planned.</param>
/// <param name="StartOn">The day on which is ordered.</param>
public sealed record PlanAsked(string Build, int Version, PlanObjective Objective, DateOnly StartOn)
{
    /// <summary>Code of the donor that stands in the place of the build's own; null: its own.</summary>
    public string? Donor { get; init; }
}

/// <summary>What a plan costs. The parts of the sum and the sum, all in one currency.</summary>
/// <param name="Total">
/// Goods, sending, import charges, work, allowances, less sales. The donor's price and deposits stand apart. What is chosen by measurement is counted at
/// its dearest grade.
/// </param>
/// <param name="Cheapest">The same where what is chosen by measurement comes out cheapest, sending as it is; equal to the total where nothing is.</param>
public sealed record PlanCost(
    Money Total, Money Cheapest, Money Goods, Money Sending, Money Import, Money Work, Money Allowances, Money Sales, Money Deposits, Money? Donor, string Text)
{
    /// <summary>Paid already, less what came back: it is in the total whatever is planned.</summary>
    public required Money Spent { get; init; }

    /// <summary>Ordered and not paid yet.</summary>
    public required Money Committed { get; init; }

    /// <summary>The rest of the plan: spent, committed and this are the total, to the least unit.</summary>
    public required Money ToGo { get; init; }
}

/// <summary>One position in the plan.</summary>
/// <param name="Position">Its code.</param>
/// <param name="Part">Null where nothing is there; of several that are chosen by measurement, null too, and they stand in <paramref name="OneOf"/>.</param>
/// <param name="Pieces">Null where the engine's number of them is not recorded.</param>
/// <param name="Because">Why this and nothing else, in one sentence; the whole chain is in <c>/why</c>.</param>
/// <param name="Unproven">Taken on trust.</param>
public sealed record BuildLine(
    string Position, string Name, string Group, LineAction Action, string ActionText, string? Part, string? PartName, IReadOnlyList<string> OneOf, int? Pieces, string Because,
    Headline Headline, Sureness Sureness, bool Unproven)
{
    /// <summary>Of goods and work of the line, without sending; null where it costs nothing.</summary>
    public Money? Cost { get; init; }

    /// <summary>Range of prices where it is chosen by measurement.</summary>
    public string? PriceRange { get; init; }

    /// <summary>What the donor has there now.</summary>
    public string? DonorHas { get; init; }

    public PartState? DonorState { get; init; }

    public IReadOnlyList<string> Works { get; init; } = [];

    /// <summary>What is bought for it.</summary>
    public IReadOnlyList<LinePurchase> Buy { get; init; } = [];

    /// <summary>What was bought for it already.</summary>
    public IReadOnlyList<LineBought> Bought { get; init; } = [];

    /// <summary>What the line is judged against: "ts as built", "as you chose it".</summary>
    public string Reference { get; init; } = "";

    /// <summary>What to mind: look-alikes, not inspected, seen long ago, measure then order.</summary>
    public IReadOnlyList<string> Flags { get; init; } = [];

    /// <summary>The fit answer of this line with the plan's own neighbours.</summary>
    public string Fit { get; init; } = "";
}

/// <param name="Offer">As <c>book/offer</c>.</param>
/// <param name="Packs">How often its price is paid, for the whole plan.</param>
public sealed record LinePurchase(string Offer, string Seller, string? NumberAsWritten, int Packs, int Pieces, Money Price, DateOnly ArrivesOn);

/// <summary>What is ordered from one seller.</summary>
/// <param name="Sending">Of this basket, in the build's currency; the text says how it comes about.</param>
public sealed record SellerBasket(
    string Seller, string Name, IReadOnlyList<BasketItem> Items, Money Goods, Money Import, Money Sending, string SendingText, Money Total, DateOnly ArrivesOn)
{
    /// <summary>
    /// What sending costs more than is counted where what is measured for first is ordered on several days and each is sent on its own; null where the one
    /// later parcel that is counted is enough.
    /// </summary>
    public Money? SentApart { get; init; }
}

/// <param name="Price">Of one pack, as offered.</param>
/// <param name="Converted">Of one pack, in the build's currency.</param>
/// <param name="For">Positions it is for.</param>
public sealed record BasketItem(
    string Offer, string? Part, string? NumberAsWritten, string Name, int Packs, int? PiecesInPack, Money Price, Money Converted, Money Total, DateOnly SeenOn, DateOnly ArrivesOn,
    IReadOnlyList<string> For, Money? CoreDeposit, IReadOnlyList<string> Flags);

/// <param name="Because">The lines that ask for it, or the wish.</param>
public sealed record PlannedWork(
    string Work, string Name, string? Who, Money? Price, int? Days, DateOnly StartsOn, DateOnly EndsOn, bool? CanBeUndone, IReadOnlyList<string> Because, IReadOnlyList<string> WaitsFor);

/// <summary>Pieces of an order that the line uses.</summary>
/// <param name="State">Ordered, arrived or checked.</param>
/// <param name="ThereOn">Since when, or by when; null where the seller says nothing of it.</param>
public sealed record LineBought(int Order, int Line, int Pieces, LineState State, DateOnly? ThereOn);

/// <summary>Pieces of an order, and the positions that the plan uses them for; none where all of them are left over.</summary>
public sealed record BoughtInPlan(
    int Order, int Line, string Part, string Name, LineState State, int Pieces, DateOnly? ThereOn, IReadOnlyList<string> For);

/// <param name="From">The offer, as <c>book/offer</c>, or the order and its line.</param>
public sealed record LeftOver(string Part, string Name, int Pieces, string From)
{
    /// <summary>The last day on which what was bought can go back; null where that is not known or it cannot.</summary>
    public DateOnly? ReturnBy { get; init; }
}

/// <param name="Saves">What the plan costs more where nothing is taken on trust, here or elsewhere; null where there is then none, or that was not reckoned.</param>
public sealed record TakenOnTrust(string Position, string What, Money? Saves, string Text);
