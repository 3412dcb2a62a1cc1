using System.Reflection;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>Answers that are told in lines while they are worked out.</summary>
internal static class JsonLines
{
    public const string MediaType = "application/jsonl";

    /// <summary>Does the request ask for lines?</summary>
    public static bool IsWanted(HttpRequest request) => request.GetTypedHeaders().Accept.Any(accepted =>
        accepted.Quality is null or > 0 && string.Equals(accepted.MediaType.Value, MediaType, StringComparison.OrdinalIgnoreCase));
}

/// <summary>An answer told while it is worked out: JSON lines, each with how far it has come, and at the end the answer itself.</summary>
internal sealed class PlanStream<TStep, TAnswer> : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    private readonly BuildSolve _turn;
    private readonly Func<Action<TStep>, CancellationToken, TAnswer> _work;

    /// <param name="turn">Given back when the last line is written.</param>
    public PlanStream(BuildSolve turn, Func<Action<TStep>, CancellationToken, TAnswer> work) => (_turn, _work) = (turn, work);

    public int? StatusCode => StatusCodes.Status200OK;

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        using var turn = _turn;
        var (response, gone) = (httpContext.Response, httpContext.RequestAborted);
        response.ContentType = $"{JsonLines.MediaType}; charset=utf-8";
        response.Headers.CacheControl = "no-store";

        // A reader who is slower than the solver misses steps in between, never the last one.
        var told = Channel.CreateBounded<TStep>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        var solving = turn.RunAsync(stop =>
        {
            try
            {
                return _work(progress => told.Writer.TryWrite(progress), stop);
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
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(TAnswer), ["application/json", JsonLines.MediaType]));

    private static async Task WriteLineAsync<T>(HttpResponse response, T line, CancellationToken gone)
    {
        await JsonSerializer.SerializeAsync(response.Body, line, JsonRules.Options, gone);
        await response.Body.WriteAsync("\n"u8.ToArray(), gone);
        await response.Body.FlushAsync(gone);
    }
}
