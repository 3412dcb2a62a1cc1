using System.Diagnostics;
using System.Text;
using PartMatch.Storage;
using PartMatch.Web.Tests.Host;

namespace PartMatch.Web.Tests.Books;

/// <summary>Nothing acknowledged is lost, and nothing half-done is kept: the built server, killed while it imports.</summary>
public sealed class ImportKillTests : IDisposable
{
    private const int Kills = 10;

    private readonly string _folder = Directory.CreateTempSubdirectory("partmatch-kill-").FullName;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Server_killed_at_any_moment_of_an_import_comes_back_with_the_old_book_or_the_new_one_whole()
    {
        byte[][] states = [BookOf("red"), BookOf("green")];
        var seed = Environment.TickCount;
        var random = new Random(seed);
        Database.Open(Path.Combine(_folder, "base.db")).Dispose();

        // The first two imports run to their end: they tell how long one takes, and that both states are sound.
        var current = 0;
        var lasted = TimeSpan.Zero;
        await using (var server = Start())
        {
            using var client = new HttpClient { BaseAddress = await server.AddressAsync() };
            foreach (var state in states.Reverse())
            {
                var clock = Stopwatch.StartNew();
                using var answer = await client.PostBookAsync(state, "?mode=replace");
                lasted = clock.Elapsed;
                Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancellation));
                Assert.Equal(state, await ExportAsync(client));
            }

            await server.KillAsync();
        }

        var interrupted = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            // A random moment in each tenth of the import, so that every stage of it is hit.
            var moment = lasted * ((kill + random.NextDouble()) / Kills);
            var isAnswered = await PostAndKillAsync(states[1 - current], moment);
            interrupted += isAnswered ? 0 : 1;

            await using var server = Start();
            using var client = new HttpClient { BaseAddress = await server.AddressAsync() };
            var found = await ExportAsync(client);
            var isNew = found.SequenceEqual(states[1 - current]);
            Assert.True(isNew || found.SequenceEqual(states[current]), $"seed {seed}, kill {kill} after {moment}: the book is neither the old one nor the new one");
            Assert.True(isNew || !isAnswered, $"seed {seed}, kill {kill} after {moment}: the import was answered, and the book is the old one");
            current = isNew ? 1 - current : current;
        }

        Assert.True(interrupted > 0, $"seed {seed}: every import was over before its kill");
    }

    /// <summary>Was the import answered before the kill?</summary>
    private async Task<bool> PostAndKillAsync(byte[] book, TimeSpan moment)
    {
        await using var server = Start();
        using var client = new HttpClient { BaseAddress = await server.AddressAsync() };
        var post = client.PostBookAsync(book, "?mode=replace");
        await Task.WhenAny(post, Task.Delay(moment, Cancellation));
        await server.KillAsync();
        try
        {
            using var answer = await post;
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static Task<byte[]> ExportAsync(HttpClient client) => client.GetByteArrayAsync(new Uri("/api/books/load", UriKind.Relative), Cancellation);

    private ServerProcess Start() => ServerProcess.Start(
        new Dictionary<string, string> { ["HOME"] = _folder, ["PartMatch__Database"] = Path.Combine(_folder, "base.db") }, ["--urls", "http://127.0.0.1:0"]);

    /// <summary>A book of 50,000 rows, where nothing else is said, in canonical form; every value of it says the word.</summary>
    internal static byte[] BookOf(string word, int partRows = 20_000)
    {
        var valueRows = partRows * 3 / 2;
        var parts = new StringBuilder("part,kind,name,note,evidence\n");
        var values = new StringBuilder("part,feature,value,minus,plus,unit,uncertainty,evidence\n");
        for (var number = 0; number < partRows; number++)
        {
            parts.Append(System.Globalization.CultureInfo.InvariantCulture, $"orrin:N-{number:00000},peg,Peg,{word},\n");
        }

        for (var number = 0; number < valueRows; number++)
        {
            values.Append(System.Globalization.CultureInfo.InvariantCulture, $"orrin:N-{number / 2:00000},{(number % 2 == 0 ? "colour" : "head")},{word},,,,,\n");
        }

        var files = new Dictionary<string, string>
        {
            ["book.csv"] = "format,book,kind,title,maker,uses,licence,note\n1,load,common,Many rows,,,,\n",
            ["features.csv"] = "kind,feature,name,type,unit,choices\npeg,colour,colour,choice,,green|red\npeg,head,colour of the head,choice,,green|red\n",
            ["kinds.csv"] = "kind,name,running,reviewed,cautions\npeg,Peg,cannot-alter,no,\n",
            ["makers.csv"] = "maker,name\norrin,Orrin\n",
            ["parts.csv"] = parts.ToString(),
            ["values.csv"] = values.ToString(),
        };
        using var zip = new MemoryStream();
        Storage.Books.BookZip.Write(new Storage.Books.BookFiles(files.Select(file => new Storage.Books.BookFile(file.Key, Encoding.UTF8.GetBytes(file.Value)))), zip);
        return zip.ToArray();
    }
}
