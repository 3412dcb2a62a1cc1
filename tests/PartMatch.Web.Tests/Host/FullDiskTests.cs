using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using PartMatch.Core.Tests.Photos;
using PartMatch.Storage;
using PartMatch.Storage.Keeping;

namespace PartMatch.Web.Tests.Host;

/// <summary>The disk of the base runs full: what was answered is there, what was not is not, and nothing is half.</summary>
public sealed class FullDiskTests : IDisposable
{
    private readonly SmallDisk? _disk = SmallDisk.TryMount();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => _disk?.Dispose();

    [Theory]
    [InlineData(0)]
    [InlineData(64 << 10)] // full in the middle of the write
    public async Task A_write_is_refused_with_the_reason_and_once_there_is_room_everything_goes_on(int left)
    {
        var disk = Disk();
        var path = Path.Combine(disk.Folder, "base.db");
        Database.Open(path).Dispose();
        byte[] shop;
        await using (var server = ServerOn(path))
        {
            using var client = server.CreateClient();
            using (var added = await client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop)))
            {
                Assert.Equal(HttpStatusCode.Created, added.StatusCode);
            }

            shop = await ExportAsync(client, "shop");
            disk.Fill(left);
            using (var refused = await client.PostBookAsync(LargeBook()))
            {
                await refused.ProblemAsync(HttpStatusCode.InsufficientStorage, "disk-full");
            }

            using (var refused = await PostAsync(client, LargePicture()))
            {
                await refused.ProblemAsync(HttpStatusCode.InsufficientStorage, "disk-full");
            }

            Assert.Equal(["shop"], (await client.AskAsync("/api/books")).List("books").Select(book => book.Text("book")));
            Assert.Equal(shop, await ExportAsync(client, "shop"));
            Assert.IsType<Sound>(BaseCheck.Run(path, Cancellation));

            disk.Free();
            using var now = await client.PostBookAsync(LargeBook());
            Assert.Equal(HttpStatusCode.Created, now.StatusCode);
            using var picture = await PostAsync(client, LargePicture());
            Assert.Equal(HttpStatusCode.Created, picture.StatusCode);
        }

        Assert.Equal(2, Assert.IsType<Sound>(BaseCheck.Run(path, Cancellation)).Books);
        await using var next = ServerOn(path);
        using var asking = next.CreateClient();
        Assert.Equal(shop, await ExportAsync(asking, "shop"));
    }

    [Fact]
    public void No_half_backup_is_left_and_a_restore_without_room_leaves_the_base_alone()
    {
        var disk = Disk();
        var path = Path.Combine(disk.Folder, "base.db");
        Database.Open(path).Dispose();
        var backup = Path.Combine(disk.Folder, "backup.db");
        Assert.IsType<BackedUp>(BaseBackup.Write(path, backup));
        var before = File.ReadAllBytes(path);
        disk.Fill(left: 64 << 10);

        var refused = Assert.IsType<KeepingRefused>(BaseBackup.Write(path, Path.Combine(disk.Folder, "second.db")));
        Assert.Contains("No room is left", refused.Sentence, StringComparison.Ordinal);
        refused = Assert.IsType<KeepingRefused>(BaseRestore.Run(path, backup, TimeProvider.System));
        Assert.Contains("No room is left", refused.Sentence, StringComparison.Ordinal);

        Assert.Equal(["backup.db", "base.db", "filler"], Directory.EnumerateFiles(disk.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(before, File.ReadAllBytes(path));
    }

    private SmallDisk Disk()
    {
        Assert.SkipUnless(_disk is not null, "needs the right to mount a disk of its own");
        return _disk!; // skipped otherwise
    }

    private static PartMatchServer ServerOn(string path) => new() { Settings = { ["PartMatch:Database"] = path, ["Logging:LogLevel:Default"] = "None" } };

    private static Task<byte[]> ExportAsync(HttpClient client, string book) =>
        client.GetByteArrayAsync(new Uri($"/api/books/{book}", UriKind.Relative), Cancellation);

    private static Task<HttpResponseMessage> PostAsync(HttpClient client, byte[] picture) => client.PostAsync(
        new Uri("/api/images", UriKind.Relative),
        new ByteArrayContent(picture) { Headers = { ContentType = new MediaTypeHeaderValue("image/png") } },
        Cancellation);

    /// <summary>Its pixels are not looked at, only their length.</summary>
    private static byte[] LargePicture() => [.. DrawnPng.Signature, .. DrawnPng.Header(), .. DrawnPng.Chunk("IDAT", new byte[256 << 10]), .. DrawnPng.End];

    /// <summary>A book of 4,000 parts, a few hundred kilobytes in the base.</summary>
    private static byte[] LargeBook()
    {
        var parts = new StringBuilder("part,kind,name,note,evidence\n");
        for (var number = 0; number < 4_000; number++)
        {
            parts.Append(CultureInfo.InvariantCulture, $"orrin:N-{number:0000},peg,Peg,a note that takes some room on the disk,\n");
        }

        return SmallBooks.Zip(new Dictionary<string, string>
        {
            ["book.csv"] = "format,book,kind,title,maker,uses,licence,note\n1,pegs,common,Many pegs,,,CC0-1.0,\n",
            ["kinds.csv"] = "kind,name,running,reviewed,cautions\npeg,Peg,cannot-alter,yes,\n",
            ["makers.csv"] = "maker,name\norrin,Orrin\n",
            ["parts.csv"] = parts.ToString(),
        });
    }
}
