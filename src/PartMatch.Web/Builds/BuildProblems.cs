using System.Globalization;
using FluentValidation.Results;
using PartMatch.Core.Builds;
using PartMatch.Storage.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>Says why a build was not stored, or is not there.</summary>
internal static class BuildProblems
{
    public static Absent NoBuild(string build, BuildStore builds)
    {
        string[] known = [.. builds.List().Where(one => one.Document is not null).Select(one => one.Saved.Build)];
        return new Absent(new FieldError(
            "build", build, "the code of a build", Nearest.Find(build, known) is { } near ? $"did you mean {near}?" : "the builds are listed at /api/builds"));
    }

    public static Absent Deleted(BuildSaved saved) => new(new FieldError(
        "build", $"{saved.Build}, deleted {saved.At}{(saved.Who is null ? "" : $" by {saved.Who}")}", "a build that is there",
        $"its versions stand at {BuildLinks.ToVersions(saved.Build)}: restore one to have it again"));

    public static Absent NoVersion(string build, int? version) => new(new FieldError(
        "version", string.Create(CultureInfo.InvariantCulture, $"{version}"), $"the number of a version of {build} that has a document",
        $"they are listed at {BuildLinks.ToVersions(build)}"));

    public static Clash Taken(BuildVersion present) => new(new FieldError(
        "code", present.Saved.Build, "a code that no other build has",
        $"give it another code, or change the one that is there: PUT {BuildLinks.To(present.Saved.Build)} with If-Match \"{present.Saved.Version}\""));

    public static Refused OtherCode(string asked, Build build) => new(Problem.Of("bad-build", new FieldError(
        "code", build.Code, asked, $"a build keeps its code: send {asked}, or store this one as another build with POST /api/builds")));

    public static Stale VersionNeeded() => new(Problem.Of("version-needed", new FieldError(
        "If-Match", "nothing", "the version of the build that was seen, in quotes", "read the build again: its ETag is its version")));

    /// <param name="yours">What was sent; null where nothing was.</param>
    public static Stale Outdated(BuildVersion present, int? seen, Build? yours) => new(
        Problem.Of("stale", new FieldError(
            "If-Match", string.Create(CultureInfo.InvariantCulture, $"{seen}"), $"\"{present.Saved.Version}\", the version there is now",
            present.Document is null
                ? $"somebody deleted it: restore a version of {BuildLinks.ToVersions(present.Saved.Build)}, or store yours with POST /api/builds"
                : "compare the two versions, then send yours again with the present version")) with
        {
            PresentBuild = present.Document is { } document ? BuildAnswer.Of(present, document, new BuildAsked(present.Saved.Build)) : null,
            YourBuild = yours,
        });

    public static FieldError ToError(ValidationFailure failure)
    {
        var mending = failure.CustomState as Mending ?? new Mending(failure.ErrorMessage);
        var found = mending.Found ?? Convert.ToString(failure.AttemptedValue, CultureInfo.InvariantCulture);
        var field = string.Join('.', failure.PropertyName.Split('.').Select(step => char.ToLowerInvariant(step[0]) + step[1..]));
        return new FieldError(field, string.IsNullOrWhiteSpace(found) ? "nothing" : found, mending.Expected, mending.Mend);
    }
}
