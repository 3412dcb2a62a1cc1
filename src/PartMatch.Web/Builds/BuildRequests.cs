using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Editing;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

public sealed record BuildsRequest(
    [property: FromQuery(Name = "deleted"), Description("true to list deleted builds as well; false when left out.")] string? Deleted);

internal sealed class BuildsRequestRules : AbstractValidator<BuildsRequest>
{
    public BuildsRequestRules() =>
        RuleFor(request => request.Deleted).Must(deleted => deleted is null or "true" or "false")
            .Otherwise("true or false", "leave it out for the present ones");
}

public sealed record BuildRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromQuery(Name = "version"), Description("An earlier version; the present one when left out.")] string? Version)
{
    internal BuildAsked ToAsked() => new(Build, BuildRules.VersionOf(Version));
}

internal sealed class BuildRequestRules : AbstractValidator<BuildRequest>
{
    public BuildRequestRules() => RuleFor(request => request.Version).MustBeVersion();
}

public sealed record BuildCreateRequest(
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal ChangeNote Note => NoteRules.Note(Who, Why);
}

internal sealed class BuildCreateRules : AbstractValidator<BuildCreateRequest>
{
    public BuildCreateRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

public sealed record BuildChangeRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromHeader(Name = "If-Match"), Description("The version that was seen, in quotes; * to change it whatever it is by now.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal int? Seen => BuildRules.SeenIn(IfMatch);

    internal ChangeNote Note => NoteRules.Note(Who, Why);

    internal BuildAsked ToAsked() => new(Build, null, Who, Why);
}

internal sealed class BuildChangeRules : AbstractValidator<BuildChangeRequest>
{
    public BuildChangeRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

public sealed record BuildRestoreRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromRoute(Name = "version"), Description("The version that shall be there again.")] string Version,
    [property: FromHeader(Name = "If-Match"), Description("The present version that was seen, in quotes; * to restore whatever it is by now.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal int? Seen => BuildRules.SeenIn(IfMatch);

    internal ChangeNote Note => NoteRules.Note(Who, Why);

    internal BuildAsked ToAsked() => new(Build, null, Who, Why);
}

internal sealed class BuildRestoreRules : AbstractValidator<BuildRestoreRequest>
{
    public BuildRestoreRules()
    {
        RuleFor(request => request.Version).MustBeVersion();
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

internal static class BuildRules
{
    /// <summary>No build ever has this version: what cannot be read as one is another than the present one.</summary>
    private const int NoVersion = 0;

    public static IRuleBuilderOptions<T, string?> MustBeVersion<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(version => version is null || VersionOf(version) is >= 1)
        .Otherwise("the number of a version, 1 for the first", "they are listed at …/versions");

    public static int? VersionOf(string? text) =>
        text is null ? null : CommonRules.FindWhole(text) is { } whole and <= int.MaxValue ? (int)whole : NoVersion;

    /// <summary>The version that If-Match names; null where any will do.</summary>
    public static int? SeenIn(string? ifMatch) => ifMatch?.Trim() is "*" or null ? null : VersionOf(ifMatch.Trim().Trim('"'));
}
