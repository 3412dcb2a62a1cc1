using System.Reflection;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>A plan told while it is worked out: JSON lines, each with the best so far and the bound, and at the end the plan itself.</summary>
public sealed class PlanStream : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    public const string MediaType = "application/jsonl";

    private readonly BuildSolve _turn;
    private readonly Func<Action<PlanProgress>, CancellationToken, BuildPlan> _plan;

    /// <param name="turn">Given back when the last line is written.</param>
    internal PlanStream(BuildSolve turn, Func<Action<PlanProgress>, CancellationToken, BuildPlan> plan) => (_turn, _plan) = (turn, plan);

    public int? StatusCode => StatusCodes.Status200OK;

    /// <summary>Does the request ask for lines?</summary>
    internal static bool IsWanted(HttpRequest request) => request.GetTypedHeaders().Accept.Any(accepted =>
        accepted.Quality is null or > 0 && string.Equals(accepted.MediaType.Value, MediaType, StringComparison.OrdinalIgnoreCase));

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        using var turn = _turn;
        var (response, gone) = (httpContext.Response, httpContext.RequestAborted);
        response.ContentType = $"{MediaType}; charset=utf-8";
        response.Headers.CacheControl = "no-store";

        // A reader who is slower than the solver misses steps in between, never the last one.
        var told = Channel.CreateBounded<PlanProgress>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        var solving = turn.RunAsync(stop =>
        {
            try
            {
                return _plan(progress => told.Writer.TryWrite(progress), stop);
            }
            finally
            {
                told.Writer.Complete();
            }
        });
        await foreach (var progress in told.Reader.ReadAllAsync(CancellationToken.None))
        {
            await WriteLineAsync(response, progress, gone);
        }

        await WriteLineAsync(response, await solving, gone);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(BuildPlan), ["application/json", MediaType]));

    private static async Task WriteLineAsync<T>(HttpResponse response, T line, CancellationToken gone)
    {
        await JsonSerializer.SerializeAsync(response.Body, line, JsonRules.Options, gone);
        await response.Body.WriteAsync("\n"u8.ToArray(), gone);
        await response.Body.FlushAsync(gone);
    }
}
