using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Builds;

namespace PartMatch.Web.Builds;

/// <summary>The builds, in order of their codes.</summary>
public sealed record BuildsAnswer(BuildsAsked Asked, IReadOnlyList<BuildSummary> Builds, string Permalink);

/// <param name="Deleted">Were the deleted ones asked for as well?</param>
public sealed record BuildsAsked(bool Deleted);

/// <summary>One build in short; a deleted one has only its code and who deleted it.</summary>
/// <param name="Saved">Who made its present version, when and why.</param>
/// <param name="Link">Its address.</param>
public sealed record BuildSummary(
    string Build, bool Deleted, string? Title, string? Family, string? Donor, string? Target, string? Currency, string? Budget, string? NeededBy,
    BuildSaved Saved, string Link)
{
    internal static BuildSummary Of(BuildVersion version) => new(
        version.Saved.Build, version.Document is null, version.Document?.Title, version.Document?.Family, version.Document?.Donor.Variant,
        version.Document?.Target, version.Document?.Currency, version.Document?.Budget, version.Document?.NeededBy, version.Saved,
        BuildLinks.To(version.Saved.Build));
}

/// <summary>One build as it was stated.</summary>
/// <param name="Version">Of the document shown; of the present one it is the ETag, to be named in If-Match by whoever changes it.</param>
/// <param name="Document">What is sent to change it.</param>
public sealed record BuildAnswer(BuildAsked Asked, int Version, BuildSaved Saved, Build Document, string Permalink)
{
    internal static BuildAnswer Of(BuildVersion version, Build document, BuildAsked asked) =>
        new(asked, version.Saved.Version, version.Saved, document, BuildLinks.To(asked.Build, asked.Version));
}

/// <param name="Version">Absent: the present one.</param>
public sealed record BuildAsked(string Build, int? Version = null, string? Who = null, string? Why = null);

/// <summary>A build that is deleted now. Its versions stay; restoring one takes this back.</summary>
public sealed record BuildDeleted(BuildAsked Asked, int Version, BuildSaved Saved, string Permalink);

/// <summary>Every version of a build, newest first.</summary>
public sealed record BuildVersionsAnswer(BuildAsked Asked, IReadOnlyList<BuildVersionShown> Versions, string Permalink);

/// <param name="Title">Absent where this version deleted it.</param>
/// <param name="Link">Where it can be read; absent where this version deleted it.</param>
public sealed record BuildVersionShown(BuildSaved Saved, string? Title, string? Link)
{
    internal static BuildVersionShown Of(BuildVersion version) => new(
        version.Saved, version.Document?.Title, version.Document is null ? null : BuildLinks.To(version.Saved.Build, version.Saved.Version));
}

internal static class BuildLinks
{
    public static string To(string build, int? version = null) => Permalink.To("/api/builds", build).With("version", version).ToString();

    public static string ToVersions(string build) => Permalink.To("/api/builds", build, "versions").ToString();
}
