using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Donors;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Donors;

internal static class DonorEndpoints
{
    public static void MapDonors(this RouteGroupBuilder api) =>
        api.MapGet("/donors", Rank).WithName("RankDonors").WithTags("plans")
            .WithSummary("Every donor that a build could begin with, ranked by what it takes to finish from it, and what to look at before paying");

    private static async Task<Results<Ok<DonorRanks>, PlanStream<DonorProgress, DonorRanks>, Absent, Clash, Busy>> Rank(
        [AsParameters] DonorsRequest request, HttpRequest sent, PlanQuestions questions, CancellationToken gone)
    {
        switch (await questions.BeginAsync(request.Build ?? "", request, gone))
        {
            case PlanReading.NotHeld notHeld:
                return notHeld.Answer;
            case PlanReading.Outdated outdated:
                return outdated.Answer;
            case PlanReading.Full full:
                return full.Answer;
            case PlanReading.Ready ready:
                DonorRanks Work(Action<DonorProgress>? told, CancellationToken stop) => Linked(
                    DonorRanking.Rank(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, told, stop), request,
                        ready);
                if (JsonLines.IsWanted(sent))
                {
                    return new PlanStream<DonorProgress, DonorRanks>(ready.Turn, Work);
                }

                using (ready.Turn)
                {
                    return TypedResults.Ok(await ready.Turn.RunAsync(stop => Work(null, stop)));
                }

            case var other:
                throw new InvalidOperationException($"A question about donors was read as {other.GetType().Name}, which no answer names.");
        }
    }

    private static DonorRanks Linked(DonorRanks ranks, DonorsRequest request, PlanReading.Ready ready) => ranks with
    {
        Permalink = request.LinkTo(ready.Version, ready.Today),
        Donors = [.. ranks.Donors.Select(donor => Linked(donor, request, ready))],
    };

    private static RankedDonor Linked(RankedDonor donor, DonorsRequest request, PlanReading.Ready ready) => donor with
    {
        Plan = new PlanRequest { Build = ready.Build.Code, Objective = request.Objective, Donor = donor.Donor == DonorOffers.Present ? null : donor.Donor }
            .LinkTo("plan", ready.Version, ready.Today).ToString(),
        Look = donor.Look is { } look
            ? look with { TellApart = new Permalink("/api/tell-apart").With("family", ready.Build.Family).With("mode", "in-hand").ToString() }
            : null,
    };
}
