using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>Which donor to drive to: every one that the build names, each with what it takes to finish the build from it.</summary>
/// <param name="Donors">The best first; then those whose place is not known for want of a price or freight; then those without a plan.</param>
public sealed record DonorRanks(PlanAsked Asked, string HeadlineText, IReadOnlyList<RankedDonor> Donors, IReadOnlyList<Caution> Cautions)
{
    public string Permalink { get; init; } = "";
}

/// <summary>One donor, and the best plan that begins with it.</summary>
/// <param name="Donor">Its code; the donor that the build has is called <c>donor</c> where it is none of the list.</param>
/// <param name="Level">How much of an engine is sold; null where that is not said.</param>
/// <param name="IsPresent">It is the donor of the build as it stands.</param>
public sealed record RankedDonor(
    string Donor, string Name, string Variant, string VariantName, string? Built, long? Serial, AssemblyLevel? Level, bool IsPresent, PlanStatus Status)
{
    /// <summary>From 1; the same for those that come to the same; null where its place is not known.</summary>
    public int? Rank { get; init; }

    /// <summary>Why it stands where it stands.</summary>
    public string RankText { get; init; } = "";

    /// <summary>Of the plan, as its own answer begins.</summary>
    public required string HeadlineText { get; init; }

    /// <summary>Price and freight as said; null where that is not known.</summary>
    public Money? Price { get; init; }

    public Money? Freight { get; init; }

    /// <summary>Everything from the engine at the bench to the finished build, in the build's currency; null without a plan.</summary>
    public Money? ToFinish { get; init; }

    /// <summary>The same with price and freight; null where one of them is not known.</summary>
    public Money? Whole { get; init; }

    /// <summary>Price and freight together up to which no other donor of the list comes cheaper; null where there is nothing to compare with, or there is no such price.</summary>
    public Money? WorthUpTo { get; init; }

    /// <summary>How the whole comes about, or what of it is missing.</summary>
    public string CostText { get; init; } = "";

    public int? Days { get; init; }

    public DateOnly? ReadyOn { get; init; }

    /// <summary>How sure the weakest line is.</summary>
    public Sureness? Sureness { get; init; }

    /// <summary>Lines that rest on what nobody knows: parts of the donor that are kept and were not inspected, and what is taken on trust.</summary>
    public int? Unknowns { get; init; }

    /// <summary>Parts of the donor that stay.</summary>
    public int? Kept { get; init; }

    /// <summary>What to mind before one drives there.</summary>
    public IReadOnlyList<string> Flags { get; init; } = [];

    /// <summary>What to look at by hand before paying.</summary>
    public DonorLook? Look { get; init; }

    /// <summary>Where there is no plan: what conflicts, as the build's own answer tells it.</summary>
    public IReadOnlyList<ConflictMember> NoPlan { get; init; } = [];

    /// <summary>The plan with this donor.</summary>
    public string Plan { get; init; } = "";
}

/// <summary>What to look at before paying: first whether it is the engine it is said to be, then what nobody has looked at yet.</summary>
/// <param name="IdentityText">What the checks of identity can do.</param>
/// <param name="Identity">All of these must come out so, in this order, if it is the variant that it is said to be.</param>
/// <param name="Parts">Kept and not inspected: what cannot be had otherwise first, then what costs most if it turns out to be bad.</param>
public sealed record DonorLook(string IdentityText, IReadOnlyList<Confirmation> Identity, IReadOnlyList<PartToSee> Parts)
{
    /// <summary>The address of the whole key over the family's variants.</summary>
    public string TellApart { get; init; } = "";
}

/// <summary>A part of the donor that the plan keeps and nobody has inspected.</summary>
/// <param name="Parts">What it has there, by the books.</param>
/// <param name="IfBad">What the build then costs more, planned anew without it; null where there is no plan without it, or that was not reckoned.</param>
/// <param name="Access">What has to come off until it is seen; null where that is not recorded.</param>
/// <param name="Limits">What it may measure at the most and the least, as far as the books hold it.</param>
public sealed record PartToSee(
    string Position, string Name, IReadOnlyList<string> Parts, int? Pieces, Money? IfBad, string Text, decimal? AccessMinutes, string? Access,
        IReadOnlyList<string> Limits);
