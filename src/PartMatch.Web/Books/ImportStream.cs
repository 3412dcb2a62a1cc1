using System.Reflection;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Storage.Books;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

/// <summary>
/// An import told while it runs, where it is asked for as JSON lines: how far it has come, and at the end the answer or the problem. Else the answer or the
/// problem alone. Ends when the reader goes: nothing is stored then.
/// </summary>
internal sealed class ImportStream(Func<Action<ImportProgress>?, CancellationToken, IResult> import) : IResult, IEndpointMetadataProvider
{
    private static readonly TimeSpan _betweenLines = TimeSpan.FromMilliseconds(200);

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var gone = httpContext.RequestAborted;
        if (!JsonLines.IsWanted(httpContext.Request))
        {
            await import(null, gone).ExecuteAsync(httpContext);
            return;
        }

        httpContext.Response.ContentType = $"{JsonLines.MediaType}; charset=utf-8";
        httpContext.Response.Headers.CacheControl = "no-store";
        await TellAsync(httpContext.Response, gone);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(ImportAnswer), ["application/json", JsonLines.MediaType]));
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status201Created, typeof(ImportAnswer), ["application/json"]));
        ProblemAnswer.Describe(builder, StatusCodes.Status400BadRequest);
        ProblemAnswer.Describe(builder, StatusCodes.Status409Conflict);
    }

    private async Task TellAsync(HttpResponse response, CancellationToken gone)
    {
        // A reader misses steps in between, never the last line.
        var told = Channel.CreateBounded<ImportProgress>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        var importing = Task.Factory.StartNew(
            () =>
            {
                try
                {
                    return import(progress => told.Writer.TryWrite(progress), gone);
                }
                finally
                {
                    told.Writer.Complete();
                }
            },
            gone, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await foreach (var progress in told.Reader.ReadAllAsync(gone))
            {
                await WriteLineAsync(response, progress, gone);
                await Task.WhenAny(importing, Task.Delay(_betweenLines, gone));
            }
        }
        finally
        {
            // Whoever went away: the request ends when the import has, so that nobody closes the base under it.
            await ((Task)importing).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await WriteLineAsync(response, (await importing as IValueHttpResult)?.Value, gone);
    }

    private static async Task WriteLineAsync(HttpResponse response, object? line, CancellationToken gone)
    {
        await JsonSerializer.SerializeAsync(response.Body, line, line?.GetType() ?? typeof(object), JsonRules.Options, gone);
        await response.Body.WriteAsync("\n"u8.ToArray(), gone);
        await response.Body.FlushAsync(gone);
    }
}
