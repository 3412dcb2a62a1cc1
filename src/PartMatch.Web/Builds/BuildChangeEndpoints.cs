using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Builds;
using PartMatch.Storage.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

internal static class BuildChangeEndpoints
{
    public static void MapBuildChanges(this RouteGroupBuilder api)
    {
        Write(api.MapPost("/builds", Create).WithName("CreateBuild").WithSummary("Stores a new build, also from a file"), takesDocument: true);
        Write(
            api.MapPut("/builds/{build}", Change).WithName("ChangeBuild").WithSummary("Changes a build that nobody has changed since it was seen"),
            takesDocument: true);
        Write(api.MapDelete("/builds/{build}", Delete).WithName("DeleteBuild").WithSummary("Deletes a build; its versions stay"));
        Write(api.MapPost("/builds/{build}/versions/{version}/restore", Restore).WithName("RestoreBuild")
            .WithSummary("Brings an earlier version back, also of a deleted build"));
    }

    private static void Write(RouteHandlerBuilder route, bool takesDocument = false)
    {
        route.WithTags("builds").WithMetadata(new RequestSizeLimitAttribute(BuildDocument.MaxBytes));
        ProblemAnswer.Describe(route, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden);
        if (takesDocument)
        {
            route.Accepts<Build>(BuildBody.Json);
            ProblemAnswer.Describe(route, StatusCodes.Status413PayloadTooLarge);
        }
    }

    private static async Task<Results<Created<BuildAnswer>, Refused, Clash, WrongMediaType>> Create(
        [AsParameters] BuildCreateRequest request, HttpRequest sent, BuildBody body, BuildStore builds, HttpResponse response, CancellationToken cancellation)
    {
        var (build, problem) = await body.ReadAsync(sent, cancellation);
        if (build is null)
        {
            return Misread(problem) is { } misread ? misread : new Refused(problem!); // one of the two is there
        }

        switch (builds.Create(build, request.Note))
        {
            case BuildOutcome.Done { Now: var now }:
                response.Headers.ETag = BuildEndpoints.TagOf(now.Saved);
                return TypedResults.Created(BuildLinks.To(build.Code), BuildAnswer.Of(now, build, new BuildAsked(build.Code, null, request.Who, request.Why)));
            case BuildOutcome.Taken taken:
                return BuildProblems.Taken(taken.Present);
            case var other:
                throw new InvalidOperationException($"A build was stored as {other.GetType().Name}, which no answer names.");
        }
    }

    private static async Task<Results<Ok<BuildAnswer>, Refused, Absent, Stale, WrongMediaType>> Change(
        [AsParameters] BuildChangeRequest request, HttpRequest sent, BuildBody body, BuildStore builds, HttpResponse response, CancellationToken cancellation)
    {
        if (request.IfMatch is null)
        {
            return BuildProblems.VersionNeeded();
        }

        var (build, problem) = await body.ReadAsync(sent, cancellation);
        return build is null ? Misread(problem) is { } misread ? misread : new Refused(problem!) // one of the two is there
            : build.Code != request.Build ? BuildProblems.OtherCode(request.Build, build)
            : builds.Save(build, request.Seen, request.Note) switch
            {
                BuildOutcome.Done done => Stored(done.Now, build, request.ToAsked(), response),
                BuildOutcome.Same same => Stored(same.Now, build, request.ToAsked(), response),
                BuildOutcome.Stale stale => BuildProblems.Outdated(stale.Present, request.Seen, build),
                BuildOutcome.Absent => BuildProblems.NoBuild(request.Build, builds),
                var other => throw new InvalidOperationException($"A build was changed as {other.GetType().Name}, which no answer names."),
            };
    }

    private static Results<Ok<BuildDeleted>, Absent, Stale> Delete([AsParameters] BuildChangeRequest request, BuildStore builds, HttpResponse response)
    {
        if (request.IfMatch is null)
        {
            return BuildProblems.VersionNeeded();
        }

        switch (builds.Delete(request.Build, request.Seen, request.Note))
        {
            case BuildOutcome.Done { Now: var now }:
                response.Headers.ETag = BuildEndpoints.TagOf(now.Saved);
                return TypedResults.Ok(new BuildDeleted(request.ToAsked(), now.Saved.Version, now.Saved, BuildLinks.ToVersions(request.Build)));
            case BuildOutcome.Same { Now: var now }:
                return BuildProblems.Deleted(now.Saved);
            case BuildOutcome.Stale stale:
                return BuildProblems.Outdated(stale.Present, request.Seen, null);
            default:
                return BuildProblems.NoBuild(request.Build, builds);
        }
    }

    private static Results<Ok<BuildAnswer>, Absent, Stale> Restore([AsParameters] BuildRestoreRequest request, BuildStore builds, HttpResponse response)
    {
        if (request.IfMatch is null)
        {
            return BuildProblems.VersionNeeded();
        }

        var version = BuildRules.VersionOf(request.Version) ?? 0;
        return builds.Restore(request.Build, version, request.Seen, request.Note) switch
        {
            BuildOutcome.Done { Now: { Document: { } document } now } => Stored(now, document, request.ToAsked(), response),
            BuildOutcome.Same { Now: { Document: { } document } now } => Stored(now, document, request.ToAsked(), response),
            BuildOutcome.Stale stale => BuildProblems.Outdated(stale.Present, request.Seen, null),
            _ => builds.Find(request.Build) is null ? BuildProblems.NoBuild(request.Build, builds) : BuildProblems.NoVersion(request.Build, version),
        };
    }

    private static Ok<BuildAnswer> Stored(BuildVersion now, Build document, BuildAsked asked, HttpResponse response)
    {
        response.Headers.ETag = BuildEndpoints.TagOf(now.Saved);
        return TypedResults.Ok(BuildAnswer.Of(now, document, asked));
    }

    private static WrongMediaType? Misread(Problem? problem) =>
        problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : null;
}
