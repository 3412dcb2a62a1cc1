using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace PartMatch.Web.Tests.Books;

public sealed class BookEndpointsTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // set before each test by InitializeAsync

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task A_book_is_added_once_listed_and_given_back()
    {
        using var added = await _client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop));

        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        Assert.Equal("/api/books/shop", added.Headers.Location?.OriginalString);
        var answer = await ReadAsync(added);
        Assert.Equal("added", answer.Text("outcome"));
        Assert.Equal("add", answer.GetProperty("asked").Text("mode"));
        Assert.Equal("/api/books/shop", answer.Text("permalink"));
        Assert.Contains("kinds.csv: 3", answer.List("counts").Select(count => $"{count.Text("file")}: {count.GetProperty("rows").GetInt32()}"));
        Assert.Equal(["shop"], (await _client.AskAsync("/api/books")).List("books").Select(book => book.Text("book")));
        Assert.Equal(SmallBooks.Shop["kinds.csv"], await ReadEntryAsync(await _client.GetByteArrayAsync(new Uri("/api/books/shop", UriKind.Relative), Cancellation), "kinds.csv"));
    }

    [Fact]
    public async Task An_export_imported_elsewhere_exports_the_same_bytes()
    {
        await AddAsync(SmallBooks.Shop, SmallBooks.Duo);
        var (shop, duo) = (await ExportAsync("shop"), await ExportAsync("duo-2"));

        await using var other = new PartMatchServer();
        using var client = other.CreateClient();
        using var first = await client.PostBookAsync(shop);
        using var second = await client.PostBookAsync(duo);

        Assert.Equal(HttpStatusCode.Created, second.StatusCode);
        Assert.Equal(duo, await client.GetByteArrayAsync(new Uri("/api/books/duo-2", UriKind.Relative), Cancellation));
    }

    [Fact]
    public async Task An_export_has_a_file_name_and_an_entity_tag_that_saves_sending_it_again()
    {
        await AddAsync(SmallBooks.Shop);
        using var answer = await _client.GetAsync(new Uri("/api/books/shop", UriKind.Relative), Cancellation);
        Assert.Equal("application/zip", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("shop.zip", answer.Content.Headers.ContentDisposition?.FileName);

        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/books/shop");
        request.Headers.IfNoneMatch.Add(answer.Headers.ETag!); // an answer without one fails here
        using var again = await _client.SendAsync(request, Cancellation);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
    }

    [Fact]
    public async Task A_book_that_exists_is_409_and_replace_puts_the_new_state_in_its_place()
    {
        await AddAsync(SmallBooks.Shop);
        var changed = SmallBooks.Zip(SmallBooks.Shop.With("kinds.csv", SmallBooks.Shop["kinds.csv"].Replace("Coolant pump", "Water pump", StringComparison.Ordinal)));

        using var refused = await _client.PostBookAsync(changed);
        var problem = await refused.ProblemAsync(HttpStatusCode.Conflict, "conflict");
        Assert.Contains("mode=replace", problem.OnlyError().Text("mend"));

        using var replaced = await _client.PostBookAsync(changed, "?mode=replace");
        Assert.Equal(HttpStatusCode.OK, replaced.StatusCode);
        Assert.Equal("replaced", (await ReadAsync(replaced)).Text("outcome"));
        Assert.Contains("Water pump", await ReadEntryAsync(await ExportAsync("shop"), "kinds.csv"));
    }

    [Fact]
    public async Task A_replacement_that_others_still_need_is_409_and_names_them()
    {
        await AddAsync(SmallBooks.Shop, SmallBooks.Duo);
        var without = string.Join('\n', SmallBooks.Shop["kinds.csv"].Split('\n').Where(line => !line.StartsWith("bolt,", StringComparison.Ordinal)));
        var smaller = SmallBooks.Shop.With("kinds.csv", without);
        foreach (var file in new[] { "features.csv", "rules.csv", "checks.csv" })
        {
            smaller = smaller.With(file, string.Join('\n', smaller[file].Split('\n').Where(line => !line.StartsWith("bolt,", StringComparison.Ordinal))));
        }

        using var refused = await _client.PostBookAsync(SmallBooks.Zip(smaller), "?mode=replace");

        var problem = await refused.ProblemAsync(HttpStatusCode.Conflict, "conflict");
        Assert.Contains(problem.List("errors"), error => error.Text("found").Contains("duo-2", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("?dry-run=true", "would-add")]
    [InlineData("?mode=replace&dry-run=true", "would-add")]
    public async Task A_dry_run_reports_and_stores_nothing(string query, string outcome)
    {
        using var answer = await _client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop), query);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var read = await ReadAsync(answer);
        Assert.Equal(outcome, read.Text("outcome"));
        Assert.True(read.GetProperty("asked").GetProperty("dryRun").GetBoolean());
        Assert.Empty((await _client.AskAsync("/api/books")).List("books"));
    }

    [Fact]
    public async Task Every_bad_row_is_named_with_file_line_and_column_and_nothing_is_stored()
    {
        var bad = SmallBooks.Shop
            .With("kinds.csv", SmallBooks.Shop["kinds.csv"].Replace("can-alter,yes,hot-parts", "can-alter,perhaps,hot-parts", StringComparison.Ordinal))
            .With("features.csv", SmallBooks.Shop["features.csv"].Replace("bolt,length,length under the head,quantity,mm,", "bolt,length,length under the head,quantity,furlong,", StringComparison.Ordinal));

        using var refused = await _client.PostBookAsync(SmallBooks.Zip(bad));

        var problem = await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-book");
        var errors = problem.List("errors").ToDictionary(error => error.Text("file"));
        Assert.Equal(["features.csv", "kinds.csv"], errors.Keys.Order());
        Assert.Equal([2, "unit", "furlong"], new object[] { errors["features.csv"].GetProperty("line").GetInt32(), errors["features.csv"].Text("column"), errors["features.csv"].Text("found") });
        Assert.Equal([4, "reviewed", "perhaps"], new object[] { errors["kinds.csv"].GetProperty("line").GetInt32(), errors["kinds.csv"].Text("column"), errors["kinds.csv"].Text("found") });
        Assert.Contains("2 faults", problem.Text("detail"));
        Assert.Empty((await _client.AskAsync("/api/books")).List("books"));
    }

    [Fact]
    public async Task What_is_no_zip_is_refused()
    {
        using var refused = await _client.PostBookAsync(Encoding.UTF8.GetBytes("not a zip"));

        await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-book");
    }

    [Fact]
    public async Task A_zip_that_leads_outside_its_folder_is_refused()
    {
        using var refused = await _client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop.With("../makers.csv", "maker,name\n")));

        await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-book");
    }

    [Theory]
    [InlineData("?mode=merge", "mode", "merge")]
    [InlineData("?dry-run=yes", "dry-run", "yes")]
    [InlineData("?dryrun=true", "dryrun", "dryrun")]
    [InlineData("?mode=add&mode=replace", "mode", "add and replace")]
    public async Task A_bad_import_question_is_refused_with_the_parameter_named(string query, string field, string found)
    {
        using var refused = await _client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop), query);

        var problem = await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-question");
        Assert.Equal(field, problem.OnlyError().Text("field"));
        Assert.Equal(found, problem.OnlyError().Text("found"));
    }

    [Fact]
    public async Task Another_media_type_is_415()
    {
        using var body = new StringContent("{}", new MediaTypeHeaderValue("application/json"));
        using var refused = await _client.PostAsync(new Uri("/api/books", UriKind.Relative), body, Cancellation);

        var problem = await refused.ProblemAsync(HttpStatusCode.UnsupportedMediaType, "wrong-media-type");
        Assert.StartsWith("application/json", problem.OnlyError().Text("found"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_book_is_404()
    {
        var problem = await _client.RefuseAsync("/api/books/nothing", HttpStatusCode.NotFound, "not-found");

        Assert.Equal("book", problem.OnlyError().Text("field"));
    }

    [Fact]
    public async Task A_new_book_is_in_the_next_answer()
    {
        await AddAsync(SmallBooks.Shop);
        Assert.Empty((await _client.AskAsync("/api/families")).List("families"));
        Assert.Empty((await _client.AskAsync("/api/numbers/12-34/near")).List("numbers"));

        await AddAsync(SmallBooks.Duo);

        Assert.Single((await _client.AskAsync("/api/families")).List("families"));
        Assert.Equal(2, (await _client.AskAsync("/api/numbers/12-34/near")).List("numbers").Count);
    }

    private async Task AddAsync(params IReadOnlyDictionary<string, string>[] books)
    {
        foreach (var book in books)
        {
            using var answer = await _client.PostBookAsync(SmallBooks.Zip(book));
            Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        }
    }

    private Task<byte[]> ExportAsync(string book) => _client.GetByteArrayAsync(new Uri($"/api/books/{book}", UriKind.Relative), Cancellation);

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer) =>
        JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancellation)).RootElement;

    private static async Task<string> ReadEntryAsync(byte[] zip, string name)
    {
        await using var archive = new ZipArchive(new MemoryStream(zip));
        using var reader = new StreamReader(archive.GetEntry(name)!.Open()); // a missing entry fails here
        return await reader.ReadToEndAsync(Cancellation);
    }
}
