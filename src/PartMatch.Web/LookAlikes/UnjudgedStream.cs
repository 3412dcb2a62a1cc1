using System.Reflection;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Core.LookAlikes;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.LookAlikes;

/// <summary>Near pairs told while they are looked for: JSON lines with how far it has come and at the end the answer; or the answer alone. Ends when the reader goes.</summary>
public sealed class UnjudgedStream : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    // It takes both cores for seconds: one after the other.
    private static readonly SemaphoreSlim _turn = new(1);

    private static readonly TimeSpan _betweenLines = TimeSpan.FromMilliseconds(200);

    private readonly Func<Action<UnjudgedProgress>, CancellationToken, UnjudgedAnswer> _decide;

    internal UnjudgedStream(Func<Action<UnjudgedProgress>, CancellationToken, UnjudgedAnswer> decide) => _decide = decide;

    public int? StatusCode => StatusCodes.Status200OK;

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (response, gone) = (httpContext.Response, httpContext.RequestAborted);
        await _turn.WaitAsync(gone);
        try
        {
            if (!JsonLines.IsWanted(httpContext.Request))
            {
                await response.WriteAsJsonAsync(await Task.Run(() => _decide(_ => { }, gone), gone), JsonRules.Options, gone);
                return;
            }

            response.ContentType = $"{JsonLines.MediaType}; charset=utf-8";
            response.Headers.CacheControl = "no-store";
            await TellAsync(response, gone);
        }
        finally
        {
            _turn.Release();
        }
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(UnjudgedAnswer), ["application/json", JsonLines.MediaType]));

    private async Task TellAsync(HttpResponse response, CancellationToken gone)
    {
        // A reader misses steps in between, never the last line.
        var told = Channel.CreateBounded<UnjudgedProgress>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        var deciding = Task.Run(
            () =>
            {
                try
                {
                    return _decide(progress => told.Writer.TryWrite(progress), gone);
                }
                finally
                {
                    told.Writer.Complete();
                }
            },
            gone);
        await foreach (var progress in told.Reader.ReadAllAsync(gone))
        {
            await WriteLineAsync(response, progress, gone);
            await Task.WhenAny(deciding, Task.Delay(_betweenLines, gone));
        }

        await WriteLineAsync(response, await deciding, gone);
    }

    private static async Task WriteLineAsync<T>(HttpResponse response, T line, CancellationToken gone)
    {
        await JsonSerializer.SerializeAsync(response.Body, line, JsonRules.Options, gone);
        await response.Body.WriteAsync("\n"u8.ToArray(), gone);
        await response.Body.FlushAsync(gone);
    }
}
