using System.Net.Mime;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Offers;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Offers;

internal static class PriceListEndpoints
{
    /// <summary>20,000 rows of 400 bytes.</summary>
    private const int MaxBodyBytes = 8 << 20;

    public static void MapPriceLists(this RouteGroupBuilder api)
    {
        var import = api.MapPost("/offers/price-list", Import).WithName("ImportPriceList").WithTags("offers")
            .WithSummary("Takes a seller's price list (CSV, or a web page with tables) into a book, all or nothing; proposes which column holds what and says of each row what its number is")
            .Accepts<Stream>(MediaTypeNames.Text.Csv, ["text/tab-separated-values", .. Listings.ListingBody.PageTypes])
            .Produces<PriceListAnswer>(contentType: MediaTypeNames.Application.Json, additionalContentTypes: PriceListStream.JsonLines)
            .WithMetadata(new RequestSizeLimitAttribute(MaxBodyBytes));
        ProblemAnswer.Describe(
            import, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge,
                StatusCodes.Status415UnsupportedMediaType);
    }

    private static async Task<Results<PriceListStream, Refused, Absent>> Import(
        [AsParameters] PriceListRequest request, HttpRequest body, OfferEntry entry, LookAlikeSource source, TimeProvider time, CancellationToken cancellation)
    {
        using var sent = new MemoryStream();
        await body.Body.CopyToAsync(sent, cancellation);
        if (entry.FindScope(request.Book ?? "") is not { } scope)
        {
            return EditProblems.NoBook(request.Book ?? "");
        }

        if (!scope.Sellers.TryGetValue(request.Seller ?? "", out var seller))
        {
            return new Absent(new FieldError(
                "seller", request.Seller ?? "", $"a seller of {request.Book} or of a book it uses{(scope.Sellers.Count == 0 ? "" : $": one of {string.Join(", ", scope.Sellers.Keys.Order(StringComparer.Ordinal))}")}",
                Nearest.Find(request.Seller ?? "", [.. scope.Sellers.Keys]) is { } near ? $"did you mean {near}?" : "record the seller first"));
        }

        if ((request.Currency ?? seller.Currency) is not { } currency)
        {
            return new Refused(Problem.Of("bad-question", new FieldError("currency", "nothing", "an ISO 4217 code such as EUR",
                "the seller has no usual currency: say which it is")));
        }

        var numbers = new SoldNumbers(source.Get(), scope.Parts);
        return Read(request, body.ContentType, sent.ToArray(), numbers) switch
        {
            PriceListReading.Read read => Run(request, request.ToAsked(currency, time.Today()), read, numbers, entry),
            PriceListReading.Unreadable unreadable => new Refused(Problem.Of(
                unreadable.Field == "body" ? "bad-request" : "bad-question",
                new FieldError(unreadable.Field, unreadable.Found, unreadable.Expected, unreadable.Mend))),
            var other => throw new InvalidOperationException($"A price list was read as {other.GetType().Name}, which no answer names."),
        };
    }

    private static PriceListReading Read(PriceListRequest request, string? contentType, byte[] bytes, SoldNumbers numbers) =>
        Listings.ListingBody.FindPage(contentType, bytes) is { } page ? PriceListPage.Of(page, numbers.IsKnown, request.TablePlace)
        : request.TablePlace is null ? PriceListCsv.Of(bytes)
        : new PriceListReading.Unreadable(request.Table ?? "", "no table: a CSV file is one", "leave it out", "table");

    private static Results<PriceListStream, Refused, Absent> Run(
        PriceListRequest request, PriceListAsked asked, PriceListReading.Read read, SoldNumbers numbers, OfferEntry entry)
    {
        var table = read.Table;
        var (given, faults) = request.Given(table);
        if (faults.Count > 0)
        {
            return new Refused(Problem.Of("bad-question", faults));
        }

        var mapping = PriceListMapping.Propose(table, numbers.IsKnown, given);
        FieldError[] missing =
        [
            .. new[] { PriceColumn.Number, PriceColumn.Price }.Where(needed => mapping.Find(needed) is null).Select(Codes.Of)
                .Select(needed => new FieldError(needed, "no column that looks like it", $"the column of the {needed}s",
                    $"name it: the heads are {string.Join(", ", table.Headers)}")),
        ];
        if (missing.Length > 0)
        {
            return new Refused(Problem.Of("bad-question", missing) with { Columns = table.Columns });
        }

        var list = new PriceList(table, mapping, new PriceListTerms(asked.Currency, request.Mark, request.EveryCondition), numbers);
        return list.DecimalMark is { IsAsked: true, Open: var open }
            ? new Refused(Problem.Of("bad-question", new FieldError(
                "decimal", $"{string.Join(", ", open.Take(3))}{(open.Count > 3 ? $" and {open.Count - 3} more" : "")}, each of which can mean two amounts",
                "point or comma", "say how the list writes its decimals: no other price of it shows that")))
            : new PriceListStream(new PriceListRun(asked, read, mapping, list, entry));
    }
}

/// <summary>
/// The answer to a price list, where it is asked for as lines of JSON with reports of how far it is, the answer or the problem being the last line.
/// </summary>
internal sealed class PriceListStream(PriceListRun run) : IResult
{
    public const string JsonLines = "application/x-ndjson";

    private static readonly byte[] _lineFeed = "\n"u8.ToArray();

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var cancellation = httpContext.RequestAborted;
        if (!httpContext.Request.GetTypedHeaders().Accept.Any(type => type.MediaType.Equals(JsonLines, StringComparison.OrdinalIgnoreCase)))
        {
            var last = run.Steps(cancellation).Last();
            await (last is Problem problem ? Problems.WriteAsync(httpContext, problem) : httpContext.Response.WriteAsJsonAsync(last, last.GetType(),
                JsonRules.Options, cancellation));
            return;
        }

        httpContext.Response.ContentType = JsonLines;
        httpContext.Response.Headers.CacheControl = "no-store";
        foreach (var step in run.Steps(cancellation))
        {
            await JsonSerializer.SerializeAsync(httpContext.Response.Body, step, step.GetType(), JsonRules.Options, cancellation);
            await httpContext.Response.Body.WriteAsync(_lineFeed, cancellation);
            await httpContext.Response.Body.FlushAsync(cancellation);
        }
    }
}
