using System.IO.Compression;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Parts books as zips, to be brought in through the page.</summary>
internal static class Books
{
    public static async Task<byte[]> GetBookAsync(this DemoServer server, string book)
    {
        using var client = server.CreateClient();
        return await client.GetByteArrayAsync(new Uri($"/api/books/{book}", UriKind.Relative), TestContext.Current.CancellationToken);
    }

    /// <summary>The same zip with the first occurrence of a text replaced in one file.</summary>
    public static async Task<byte[]> SpoilAsync(byte[] zip, string file, string text, string replacement)
    {
        var cancellation = TestContext.Current.CancellationToken;
        using var memory = new MemoryStream();
        await memory.WriteAsync(zip, cancellation);
        await using (var archive = await ZipArchive.CreateAsync(memory, ZipArchiveMode.Update, leaveOpen: true, entryNameEncoding: null, cancellation))
        {
            var entry = archive.GetEntry(file) ?? throw new InvalidOperationException($"the book has no {file}");
            string content;
            using (var reader = new StreamReader(await entry.OpenAsync(cancellation)))
            {
                content = await reader.ReadToEndAsync(cancellation);
            }

            var at = content.IndexOf(text, StringComparison.Ordinal);
            Assert.True(at >= 0, $"{file} holds no {text}");
            await using var stream = await entry.OpenAsync(cancellation);
            stream.SetLength(0);
            await using var writer = new StreamWriter(stream);
            await writer.WriteAsync(string.Concat(content.AsSpan(0, at), replacement, content.AsSpan(at + text.Length)));
        }

        return memory.ToArray();
    }
}
