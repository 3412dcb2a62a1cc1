using System.Net;
using System.Text.Json;
using PartMatch.Web.Tests.Builds;

namespace PartMatch.Web.Tests.Seed;

/// <summary>A server with the demo books and builds of the repository.</summary>
public sealed class SeedServer : PartMatchServer, IAsyncLifetime
{
    public async ValueTask InitializeAsync()
    {
        using var client = CreateClient();
        foreach (var book in Storage.Books.BookShelf.Read(Path.Combine(Repository.Folder, "data-seed")))
        {
            using var zip = new MemoryStream();
            Storage.Books.BookZip.Write(book.Files, zip);
            using var answer = await client.PostBookAsync(zip.ToArray(), "?who=PartMatch&why=a+demo+book");
            Assert.True(answer.StatusCode == HttpStatusCode.Created, $"{book.Folder}: {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        }

        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Folder, "data-seed", "builds"), "*.json").Order(StringComparer.Ordinal))
        {
            using var document = new ByteArrayContent(await File.ReadAllBytesAsync(file)) { Headers = { ContentType = new("application/json") } };
            using var answer = await client.PostAsync(new Uri("/api/builds?who=PartMatch&why=a+demo+build", UriKind.Relative), document, TestContext.Current.CancellationToken);
            Assert.True(answer.StatusCode == HttpStatusCode.Created, $"{file}: {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        }

        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Folder, "data-seed", "orders"), "*.json").Order(StringComparer.Ordinal))
        {
            using var document = JsonDocument.Parse(await File.ReadAllBytesAsync(file));
            var orders = $"/api/builds/{document.RootElement.Text("build")}/orders";
            foreach (var (index, order) in document.RootElement.List("orders").Index())
            {
                await TellAsync(client, orders, order.GetProperty("ordered"));
                foreach (var did in order.List("events"))
                {
                    await TellAsync(client, $"{orders}/{index + 1}", did);
                }
            }
        }
    }

    private static async Task TellAsync(HttpClient client, string address, JsonElement told)
    {
        using var answer = await client.SendAsync(HttpMethod.Post, $"{address}?who=PartMatch&why=a+demo+order", told.GetRawText(), "*");
        Assert.True(answer.IsSuccessStatusCode, $"{address}: {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
    }
}

/// <summary>The table of questions in data-seed/README.md, asked over HTTP: it is written by hand from the scenario, not from our answers.</summary>
public sealed class SeedQuestionsTests(SeedServer server)
{
    /// <summary>Question, expected headline, expected sureness where the row tells it, and address of each row.</summary>
    public static TheoryData<string, string, string?, string> Questions
    {
        get
        {
            var rows = new TheoryData<string, string, string?, string>();
            var lines = File.ReadAllLines(Path.Combine(Repository.Folder, "data-seed", "README.md"));
            foreach (var line in lines.SkipWhile(line => !line.StartsWith("## Questions", StringComparison.Ordinal)).Where(line => line.Contains("/api/", StringComparison.Ordinal)))
            {
                var cells = line.Trim().Trim('|').Split('|').Select(cell => cell.Trim().Trim('`')).ToArray();
                Assert.InRange(cells.Length, 3, 4);
                rows.Add(cells[0], cells[1], cells.Length == 4 ? cells[2] : null, cells[^1]);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task The_demo_data_answers_the_question_as_its_page_says(string question, string headline, string? sureness, string address)
    {
        Assert.NotEmpty(question);
        using var client = server.CreateClient();

        var answer = await client.AskAsync(address);

        Assert.Equal(headline.ToLowerInvariant().Replace(' ', '-'), answer.Text("headline"));
        Assert.Equal(sureness ?? answer.Text("sureness"), answer.Text("sureness"));
    }

    [Fact]
    public void There_are_questions_to_ask() => Assert.NotEmpty(Questions);

    [Fact]
    public async Task Every_position_of_every_family_answers_for_every_ordered_pair_of_variants()
    {
        using var client = server.CreateClient();
        foreach (var family in (await client.AskAsync("/api/families")).List("families"))
        {
            var count = family.List("variants").Count;
            var answer = await client.AskAsync($"/api/compare?family={family.Text("family")}");
            Assert.Equal(family.GetProperty("positions").GetInt32(), answer.List("positions").Count);
            Assert.All(answer.List("positions"), position => Assert.Equal(count * (count - 1), position.List("across").Count));
        }
    }

    [Theory]
    [InlineData("common")]
    [InlineData("hs-2")]
    [InlineData("tern-16")]
    public async Task A_demo_book_comes_back_byte_for_byte(string book)
    {
        using var client = server.CreateClient();
        using var zip = new MemoryStream(await client.GetByteArrayAsync(new Uri($"/api/books/{book}", UriKind.Relative), TestContext.Current.CancellationToken));
        var read = Assert.IsType<Storage.Books.BookRead>(Storage.Books.BookZip.Read(zip, new Storage.Books.BookZipLimits()));

        var folder = Storage.Books.BookFolder.Read(Path.Combine(Repository.Folder, "data-seed", book));
        Assert.Equal(folder.Files.Select(file => file.Name), read.Files.Files.Select(file => file.Name));
        Assert.All(folder.Files, file => Assert.True(file.Content.Span.SequenceEqual(read.Files.Find(file.Name)!.Content.Span), file.Name)); // names were compared above
    }
}
