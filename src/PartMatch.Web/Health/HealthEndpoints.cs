using System.Reflection;
using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Families;
using PartMatch.Storage.Families;

namespace PartMatch.Web.Health;

internal static class HealthEndpoints
{
    private static readonly string _version = typeof(HealthEndpoints).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "";

    public static void MapHealth(this RouteGroupBuilder api) =>
        api.MapGet("/health", Show).WithName("ShowHealth").WithTags("health")
            .WithSummary("Does the server answer from its base?");

    // A base that cannot be read ends in a problem of status 500, so an answer always says ok.
    private static Ok<HealthAnswer> Show(FamilyStore families) =>
        TypedResults.Ok(new HealthAnswer(new NothingAsked(), "ok", _version, families.List().Count, "/api/health"));
}

/// <param name="Status"><c>ok</c>: the base was read for this answer.</param>
/// <param name="Version">Of the program.</param>
/// <param name="Families">How many families the base holds.</param>
public sealed record HealthAnswer(NothingAsked Asked, string Status, string Version, int Families, string Permalink);
