using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Storage.Builds;
using PartMatch.Web.Families;
using PartMatch.Web.Host;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;
using PartMatch.Web.Orders;

namespace PartMatch.Web.Builds;

/// <summary>A question about a plan whose build has been read and still holds; or why it cannot be asked.</summary>
internal abstract record PlanReading
{
    private PlanReading()
    {
    }

    /// <param name="Today">The day of the question.</param>
    /// <param name="Turn">To be disposed of once the answer is there.</param>
    public sealed record Ready(BuildFacts Facts, FitMemory Memory, Build Build, int Version, DateOnly Today, PlanEffort Effort, BuildSolve Turn) : PlanReading;

    public sealed record NotHeld(Absent Answer) : PlanReading;

    /// <summary>The base changed since the build was stored.</summary>
    public sealed record Outdated(Clash Answer) : PlanReading;

    /// <summary>Others are being worked out.</summary>
    public sealed record Full(Busy Answer) : PlanReading;
}

/// <summary>What every question about a plan begins with.</summary>
internal sealed class PlanQuestions(BuildStore builds, BuildBody body, BuildSource source, BuildSolves solves, BuildOrders orders, PlanSettings settings, TimeProvider time)
{
    public async Task<PlanReading> BeginAsync(string build, BuildDayRequest request, CancellationToken gone)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(build, request.OfVersion), builds);
        if (version?.Document is not { } document)
        {
            return new PlanReading.NotHeld(absent!); // one of the two is there
        }

        var problem = body.FindProblem(document);
        if (problem is not null || source.Find(document.Family) is not { } grounds)
        {
            return new PlanReading.Outdated(new Clash(Problem.Of("build-outdated", problem?.Errors ?? [])));
        }

        if ((request.OtherDonor is { } code ? DonorOffers.FindWith(document, code) : document) is not { } asked)
        {
            return new PlanReading.NotHeld(NoDonor(request.OtherDonor ?? "", document));
        }

        var (bought, other) = orders.Find(document, request.Day);
        if (other is not null)
        {
            return new PlanReading.Outdated(new Clash(Problem.Of("build-outdated", other)));
        }

        var facts = grounds.Facts with { Bought = bought };
        return await solves.BeginAsync(document.Code, gone) is { } turn
            ? new PlanReading.Ready(facts, grounds.Memory, asked, version.Saved.Version, request.Day ?? time.Today(), settings.Effort, turn)
            : new PlanReading.Full(new Busy(
                Problem.Of(
                    "planning-busy", new FieldError("PartMatch:PlansAtOnce", $"{settings.AtOnce} at work", "a turn that is free", "ask again a little later")),
                (int)settings.Patience.TotalSeconds));
    }

    private static Absent NoDonor(string found, Build build) =>
        new(KnownNames.Unknown("donor", found, [.. DonorOffers.Of(build).Select(offer => offer.Code)]));

    /// <summary>Reads the question, works it out in its turn and answers.</summary>
    /// <param name="check">What of the question cannot be asked of this build; null where all can.</param>
    /// <param name="decide">Runs beside the threads that serve requests.</param>
    public async Task<Results<T, Refused, Absent, Clash, Busy>> AnswerAsync<T>(
        string build, BuildDayRequest request, Func<PlanReading.Ready, ProblemAnswer?> check,
        Func<PlanReading.Ready, CancellationToken, Results<T, Refused, Absent, Clash, Busy>> decide, CancellationToken gone)
        where T : IResult
    {
        switch (await BeginAsync(build, request, gone))
        {
            case PlanReading.NotHeld notHeld:
                return notHeld.Answer;
            case PlanReading.Outdated outdated:
                return outdated.Answer;
            case PlanReading.Full full:
                return full.Answer;
            case PlanReading.Ready ready:
                using (ready.Turn)
                {
                    return check(ready) switch
                    {
                        Absent absent => absent,
                        Refused refused => refused,
                        _ => await ready.Turn.RunAsync(stop => decide(ready, stop)),
                    };
                }

            case var other:
                throw new InvalidOperationException($"A question about a plan was read as {other.GetType().Name}, which no answer names.");
        }
    }
}
