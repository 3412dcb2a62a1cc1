using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

internal static class BuildEndpoints
{
    public static void MapBuilds(this RouteGroupBuilder api)
    {
        api.MapGet("/builds", List).WithName("ListBuilds").WithTags("builds").WithSummary("The builds");
        api.MapGet("/builds/{build}", Show).WithName("ShowBuild").WithTags("builds").WithSummary("One build as it was stated, now or in an earlier version");
        api.MapGet("/builds/{build}/file", Export).WithName("ExportBuild").WithTags("builds").WithSummary("One build as a file; POST /api/builds takes it in")
            .Produces(StatusCodes.Status200OK, contentType: BuildBody.Json);
        api.MapGet("/builds/{build}/versions", Versions).WithName("ListBuildVersions").WithTags("builds")
            .WithSummary("Who changed a build, when and why; newest first");
        Write(api.MapPost("/builds", Create).WithName("CreateBuild").WithSummary("Stores a new build, also from a file"), takesDocument: true);
        Write(api.MapPut("/builds/{build}", Change).WithName("ChangeBuild").WithSummary("Changes a build that nobody has changed since it was seen"), takesDocument: true);
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

    private static Ok<BuildsAnswer> List([AsParameters] BuildsRequest request, BuildStore builds)
    {
        var asked = new BuildsAsked(request.Deleted == "true");
        return TypedResults.Ok(new BuildsAnswer(
            asked, [.. builds.List().Where(build => asked.Deleted || build.Document is not null).Select(BuildSummary.Of)],
            new Permalink("/api/builds").With("deleted", asked.Deleted ? "true" : null).ToString()));
    }

    private static Results<Ok<BuildAnswer>, Absent> Show([AsParameters] BuildRequest request, BuildStore builds, HttpResponse response)
    {
        var asked = request.ToAsked();
        var (version, absent) = Find(asked, builds);
        if (version?.Document is not { } document)
        {
            return absent!; // one of the two is there
        }

        response.Headers.ETag = TagOf(version.Saved);
        return TypedResults.Ok(BuildAnswer.Of(version, document, asked));
    }

    private static Results<FileContentHttpResult, Absent> Export([AsParameters] BuildRequest request, BuildStore builds)
    {
        var (version, absent) = Find(request.ToAsked(), builds);
        return version?.Document is { } document
            ? TypedResults.File(
                Encoding.UTF8.GetBytes(BuildDocument.Write(document)), BuildBody.Json, $"{document.Code}.build.json", entityTag: new EntityTagHeaderValue(TagOf(version.Saved)))
            : absent!; // one of the two is there
    }

    private static Results<Ok<BuildVersionsAnswer>, Absent> Versions(string build, BuildStore builds, HttpResponse response)
    {
        if (builds.Versions(build) is not [var present, ..] versions)
        {
            return BuildProblems.NoBuild(build, builds);
        }

        response.Headers.ETag = TagOf(present.Saved);
        return TypedResults.Ok(new BuildVersionsAnswer(new BuildAsked(build), [.. versions.Select(BuildVersionShown.Of)], BuildLinks.ToVersions(build)));
    }

    private static async Task<Results<Created<BuildAnswer>, Refused, Clash, WrongMediaType>> Create(
        [AsParameters] BuildCreateRequest request, HttpRequest sent, BuildBody body, BuildStore builds, HttpResponse response, CancellationToken cancellation)
    {
        var (build, problem) = await body.ReadAsync(sent, cancellation);
        if (build is null)
        {
            return Misread(problem) is { } misread ? misread : new Refused(problem!); // one of the two is there
        }

        if (builds.Create(build, request.Note) is not BuildOutcome.Done { Now: var now })
        {
            return BuildProblems.Taken(builds.Find(build.Code)!); // it was there a moment ago, and versions stay
        }

        response.Headers.ETag = TagOf(now.Saved);
        return TypedResults.Created(BuildLinks.To(build.Code), BuildAnswer.Of(now, build, new BuildAsked(build.Code, null, request.Who, request.Why)));
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
                response.Headers.ETag = TagOf(now.Saved);
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

    /// <summary>The version asked for with its document, or why there is none.</summary>
    internal static (BuildVersion? Version, Absent? Absent) Find(BuildAsked asked, BuildStore builds) => (builds.Find(asked.Build, asked.Version), asked.Version) switch
    {
        ({ Document: not null } version, _) => (version, null),
        ({ } deleted, null) => (null, BuildProblems.Deleted(deleted.Saved)),
        (_, { } number) when builds.Find(asked.Build) is not null => (null, BuildProblems.NoVersion(asked.Build, number)),
        _ => (null, BuildProblems.NoBuild(asked.Build, builds)),
    };

    private static Ok<BuildAnswer> Stored(BuildVersion now, Build document, BuildAsked asked, HttpResponse response)
    {
        response.Headers.ETag = TagOf(now.Saved);
        return TypedResults.Ok(BuildAnswer.Of(now, document, asked));
    }

    private static WrongMediaType? Misread(Problem? problem) => problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : null;

    private static string TagOf(BuildSaved saved) => $"\"{saved.Version}\"";
}
