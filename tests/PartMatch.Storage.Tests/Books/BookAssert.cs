using System.Text;
using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

internal static class BookAssert
{
    /// <summary>The same files with the same bytes; shown as text where they differ.</summary>
    public static void Equal(BookFiles expected, BookFiles actual)
    {
        Assert.Equal(expected.Files.Select(file => file.Name), actual.Files.Select(file => file.Name));
        foreach (var (left, right) in expected.Files.Zip(actual.Files))
        {
            if (!left.Content.Span.SequenceEqual(right.Content.Span))
            {
                Assert.Equal(Encoding.UTF8.GetString(left.Content.Span), Encoding.UTF8.GetString(right.Content.Span));
                Assert.Fail($"{left.Name}: the same text, other bytes");
            }
        }
    }
}
