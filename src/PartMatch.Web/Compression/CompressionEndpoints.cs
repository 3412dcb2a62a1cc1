using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Compression;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Compression;

internal static class CompressionEndpoints
{
    private const string Plot = "/plots/compression.";

    public static void MapCompression(this RouteGroupBuilder api)
    {
        api.MapGet("/compression", Reckon).WithName("ReckonCompression").WithTags("compression")
            .WithSummary("What compression these parts make, volume by volume, with the squish, and how much of it is trapped");
        api.MapGet(Plot + PlotAnswer.Form, Draw).WithName("DrawCompression").WithTags("compression")
            .WithSummary("What these parts trap over intake closing as a drawing, or the numbers behind it");
    }

    private static Results<Ok<CompressionAnswer>, Refused, Absent> Reckon([AsParameters] CompressionRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (CompressionAnswer answer, _, _) => TypedResults.Ok(answer with { Permalink = request.Permalink(), Plots = [.. Links(answer, request)] }),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static Results<PlotAnswer, Refused, Absent> Draw(string form, [AsParameters] CompressionRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (CompressionAnswer answer, _, _) when TrappedPlot.Of(answer) is { } plot => new PlotAnswer(plot, form),
            (CompressionAnswer, _, _) => new Refused(Problem.Of("not-recorded", new FieldError("intake-closes", "nothing", "the intake closing and the rod "
                + "length", "give what the warnings of the sum name"))),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!,
        };

    /// <summary>The answer, or why there is none: one of the three.</summary>
    private static (CompressionAnswer? Answer, Refused? Refused, Absent? Absent) Ask(CompressionRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return (null, null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        if (facts.FindVariant(request.Variant ?? "") is null)
        {
            return (null, null, KnownNames.NoVariant(request.Variant ?? "", facts));
        }

        var named = request.Parts(parts);
        return named.Problem is { } problem
            ? (null, new Refused(problem), null)
            : CompressionReckoning.Reckon(facts, request.ToQuestion(named)) switch
            {
                CompressionAnswer answer => (answer, null, null),
                SumRefused refused => (null, Refused.Of(refused), null),
                var other => throw new InvalidOperationException($"A compression ended as {other.GetType().Name}, which no answer names."),
            };
    }

    private static IEnumerable<PlotLink> Links(CompressionAnswer answer, CompressionRequest request)
    {
        if (TrappedPlot.Of(answer) is { } trapped)
        {
            yield return new PlotLink("trapped-compression", trapped.Title, request.Permalink("/api" + Plot + PlotAnswer.Svg));
        }
    }
}
