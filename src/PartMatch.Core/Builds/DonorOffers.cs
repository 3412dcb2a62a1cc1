namespace PartMatch.Core.Builds;

/// <summary>The donors that a build could begin with.</summary>
public static class DonorOffers
{
    /// <summary>What the donor that the build has is called where it is none of the list. No offer has this code.</summary>
    public const string Present = "donor";

    /// <summary>The donor that the build has first, unless it is one of the others; then in the order of the document.</summary>
    public static IReadOnlyList<DonorOffer> Of(Build build) => build.Donors.Any(offer => IsPresent(build, offer))
        ? build.Donors
        : [new DonorOffer(Present, "The donor it has", build.Donor), .. build.Donors];

    /// <summary>Has it been taken, and nothing of it changed since?</summary>
    public static bool IsPresent(Build build, DonorOffer offer) => AreSame(build.Donor, offer.Donor);

    /// <summary>The build with another donor; null where none has that code.</summary>
    public static Build? FindWith(Build build, string code) => code == Present ? build
        : build.Donors.FirstOrDefault(offer => offer.Code == code) is { } found ? With(build, found)
        : null;

    /// <summary>The build with that donor in the place of the one it has; the list stays as it is.</summary>
    public static Build With(Build build, DonorOffer offer) => build with { Donor = offer.Donor };

    // Lists in a record are compared by what they hold.
    private static bool AreSame(Donor one, Donor other) =>
        one with { States = [], ComesWith = [] } == other with { States = [], ComesWith = [] }
        && one.States.SequenceEqual(other.States) && one.ComesWith.SequenceEqual(other.ComesWith);
}
