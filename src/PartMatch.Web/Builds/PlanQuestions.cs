using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Storage.Builds;
using PartMatch.Web.Host;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Builds;

/// <summary>A question about a plan whose build has been read and still holds; or why it cannot be asked.</summary>
internal abstract record PlanReading
{
    private PlanReading()
    {
    }

    /// <param name="Today">The day of the question.</param>
    public sealed record Ready(
        BuildFacts Facts, FitMemory Memory, Build Build, int Version, PlanObjective Objective, DateOnly Today, PlanEffort Effort) : PlanReading;

    public sealed record NotHeld(Absent Answer) : PlanReading;

    /// <summary>The base changed since the build was stored.</summary>
    public sealed record Outdated(Clash Answer) : PlanReading;
}

/// <summary>What every question about a plan begins with.</summary>
internal sealed class PlanQuestions(BuildStore builds, BuildBody body, BuildSource source, BuildSolves solves, PlanSettings settings, TimeProvider time)
{
    public PlanReading Read(PlanRequest request)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build, BuildRules.VersionOf(request.Version)), builds);
        if (version?.Document is not { } build)
        {
            return new PlanReading.NotHeld(absent!); // one of the two is there
        }

        var problem = body.FindProblem(build);
        return problem is not null || source.Find(build.Family) is not { } grounds
            ? new PlanReading.Outdated(new Clash(Problem.Of("build-outdated", problem?.Errors ?? [])))
            : new PlanReading.Ready(
                grounds.Facts, grounds.Memory, build, version.Saved.Version, request.Aim, OfferRules.DayOf(request.On) ?? time.Today(), settings.Effort);
    }

    public Task<BuildSolve?> BeginAsync(PlanReading.Ready ready, CancellationToken gone) => solves.BeginAsync(ready.Build.Code, gone);

    public Busy Full() => new(
        Problem.Of("planning-busy", new FieldError("PartMatch:PlansAtOnce", "as many plans as it allows", "a turn that is free", "ask again a little later")),
        (int)settings.Patience.TotalSeconds);
}
