using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
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
                Encoding.UTF8.GetBytes(BuildDocument.Write(document)), BuildBody.Json, $"{document.Code}.build.json",
                entityTag: new EntityTagHeaderValue(TagOf(version.Saved)))
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

    /// <summary>The version asked for with its document, or why there is none.</summary>
    internal static (BuildVersion? Version, Absent? Absent) Find(BuildAsked asked, BuildStore builds) =>
        (builds.Find(asked.Build, asked.Version), asked.Version) switch
        {
            ({ Document: not null } version, _) => (version, null),
            ({ } deleted, null) => (null, BuildProblems.Deleted(deleted.Saved)),
            (_, { } number) when builds.Find(asked.Build) is not null => (null, BuildProblems.NoVersion(asked.Build, number)),
            _ => (null, BuildProblems.NoBuild(asked.Build, builds)),
        };

    internal static string TagOf(BuildSaved saved) => $"\"{saved.Version}\"";
}
