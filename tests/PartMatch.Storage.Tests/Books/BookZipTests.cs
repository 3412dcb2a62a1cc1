using System.IO.Compression;
using System.Text;
using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class BookZipTests
{
    private static readonly BookZipLimits _limits = new(MaxEntries: 40, MaxBytes: 4 << 20, MaxRatio: 100);

    [Fact]
    public void Book_comes_back_as_it_was_packed()
    {
        var read = Assert.IsType<BookRead>(BookZip.Read(Packed(SampleBook.Family().Files), _limits));
        BookAssert.Equal(SampleBook.Family().Files, read.Files);
    }

    [Fact]
    public void Equal_books_give_equal_bytes_with_the_oldest_date_and_names_in_order()
    {
        var zip = Packed(SampleBook.Family().Files);
        Assert.Equal(zip.ToArray(), Packed(new BookFiles(SampleBook.Family().Files.Files.Reverse())).ToArray());
        using var archive = new ZipArchive(zip);
        Assert.Equal(archive.Entries.Select(entry => entry.FullName).Order(StringComparer.Ordinal), archive.Entries.Select(entry => entry.FullName));
        Assert.All(archive.Entries, entry => Assert.Equal(new DateTime(1980, 1, 1, 0, 0, 0, DateTimeKind.Unspecified), entry.LastWriteTime.DateTime));
    }

    [Fact]
    public void One_folder_around_the_files_is_accepted()
    {
        var zip = Zip(("lark-2/", ""), ("lark-2/makers.csv", "maker,name\n"), ("lark-2/book.csv", "x\n"));
        Assert.Equal(["book.csv", "makers.csv"], Assert.IsType<BookRead>(BookZip.Read(zip, _limits)).Files.Files.Select(file => file.Name));
    }

    [Theory]
    [InlineData("several folders", "a/book.csv", "b/makers.csv")]
    [InlineData("several folders", "book.csv", "b/makers.csv")]
    [InlineData("a folder inside a folder", "a/b/book.csv")]
    [InlineData("out of the zip", "../book.csv")]
    [InlineData("out of the zip", "a/../book.csv")]
    [InlineData("out of the zip", "/book.csv")]
    [InlineData("out of the zip", "..\\book.csv")]
    [InlineData("out of the zip", "book.csv\nx")]
    [InlineData("there twice", "book.csv", "book.csv")]
    public void Entries_that_lead_elsewhere_are_refused(string reason, params string[] names) =>
        Assert.Contains(reason, Refusal(Zip([.. names.Select(name => (name, "x\n"))])).Reason, StringComparison.Ordinal);

    [Fact]
    public void Link_is_refused()
    {
        const int UnixLink = 0xA1FF;
        var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            var entry = archive.CreateEntry("book.csv");
            entry.ExternalAttributes = UnixLink << 16;
            using var stream = entry.Open();
            stream.Write("/etc/hostname"u8);
        }

        var error = Refusal(zip);
        Assert.Equal(("book.csv", "a link or a device, expected a plain file"), (error.File, error.Reason));
    }

    [Fact]
    public void Number_of_entries_is_bounded()
    {
        Assert.IsType<BookRead>(BookZip.Read(Zip([.. Enumerable.Range(0, 40).Select(number => ($"{number}.csv", "x"))]), _limits));
        Assert.Contains("41 entries", Refusal(Zip([.. Enumerable.Range(0, 41).Select(number => ($"{number}.csv", "x"))])).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Unpacked_size_is_bounded_over_all_files()
    {
        var half = Noise((2 << 20) + 1);
        Assert.Contains("bytes unpacked", Refusal(Zip(("a.csv", half), ("b.csv", half))).Reason, StringComparison.Ordinal);
        Assert.IsType<BookRead>(BookZip.Read(Zip(("a.csv", half), ("b.csv", half[2..])), _limits));
    }

    [Fact]
    public void File_that_unpacks_to_much_more_than_its_size_is_refused() =>
        Assert.Contains("100 times its size", Refusal(Zip(("a.csv", new string('0', 3 << 20)))).Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(200)]
    public void What_is_no_zip_or_ends_early_is_refused(int length)
    {
        var whole = Packed(SampleBook.Family().Files).ToArray();
        Assert.Contains("not a zip file", Refusal(new MemoryStream(whole[..length])).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Damaged_content_is_refused()
    {
        var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var stream = archive.CreateEntry("book.csv", CompressionLevel.NoCompression).Open();
            stream.Write("format,book"u8);
        }

        var bytes = zip.ToArray();
        bytes[bytes.AsSpan().IndexOf("format,book"u8)] = (byte)'F';
        Assert.Contains("check sum", Refusal(new MemoryStream(bytes)).Reason, StringComparison.Ordinal);
    }

    private static ImportError Refusal(MemoryStream zip) => Assert.IsType<BookUnreadable>(BookZip.Read(zip, _limits)).Error;

    private static MemoryStream Packed(BookFiles files)
    {
        var zip = new MemoryStream();
        BookZip.Write(files, zip);
        zip.Position = 0;
        return zip;
    }

    private static MemoryStream Zip(params (string Name, string Text)[] entries)
    {
        var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in entries)
            {
                using var stream = archive.CreateEntry(name).Open();
                stream.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        zip.Position = 0;
        return zip;
    }

    /// <summary>Text that hardly packs: the digits of a fixed linear congruential sequence.</summary>
    private static string Noise(int length)
    {
        var text = new StringBuilder(length);
        for (var state = 1u; text.Length < length; state = (state * 1664525) + 1013904223)
        {
            text.Append((char)('!' + (state >> 24 & 63)));
        }

        return text.ToString();
    }
}
