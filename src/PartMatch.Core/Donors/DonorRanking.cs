using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>How far the ranking has come.</summary>
/// <param name="Donor">The one whose plan is worked out.</param>
/// <param name="Number">From 1.</param>
/// <param name="Best">Of what counts first in its plan; null before anything was found.</param>
/// <param name="Bound">Of the same, what is possible at best; null before that is known.</param>
/// <param name="Looked">Once its plan is there: parts of it for which is reckoned already what they cost if they turn out to be bad.</param>
/// <param name="ToLook">How many there are.</param>
public sealed record DonorProgress(string Donor, string Name, int Number, int Of, long? Best = null, long? Bound = null, int? Looked = null,
    int? ToLook = null);

/// <summary>Which donor is it worth to drive to? Each gets the plan of the build that begins with it, and by those plans they are ranked.</summary>
public static class DonorRanking
{
    // Whoever stands before a donor looks at what holds for any: it may hold voltage, fuel and pressure, and it is heavy.
    private static readonly string[] _cautions =
        ["donor-in-the-yard", "fuel-pressure", "high-voltage", "hot-parts", "lifting", "magnet-rotor", "residual-rail-pressure"];

    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static DonorRanks Rank(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory,
        Action<DonorProgress>? told = null, CancellationToken stop = default)
    {
        var offers = DonorOffers.Of(build);
        var planned = offers.Select((offer, index) =>
        {
            var begun = new DonorProgress(offer.Code, offer.Name, index + 1, offers.Count);
            told?.Invoke(begun);
            return PlannedDonor.Of(
                new BuildToRank(facts, build, version, objective, today, effort, memory)
                {
                    Planning = progress => told?.Invoke(begun with { Best = progress.Best, Bound = progress.Bound }),
                    Looking = (looked, toLook) => told?.Invoke(begun with { Looked = looked, ToLook = toLook }),
                },
                offer, stop);
        }).ToList();
        var ranked = DonorOrder.Of(planned, objective);
        return new DonorRanks(
            new PlanAsked(build.Code, version, objective, BuildTerms.Of(facts, build, today).StartOn), DonorWords.Headline(ranked, objective), ranked,
                Cautions.Of(_cautions));
    }
}

/// <summary>The question behind every plan of the list.</summary>
internal sealed record BuildToRank(
    BuildFacts Facts, Build Build, int Version, PlanObjective Objective, DateOnly Today, PlanEffort Effort, FitMemory Memory)
{
    public required Action<PlanProgress> Planning { get; init; }

    /// <summary>Of how many parts is reckoned what they cost if they are bad, and how many there are.</summary>
    public required Action<int, int> Looking { get; init; }
}
