using System.Globalization;
using PartMatch.Storage.Books;

namespace PartMatch.Web.Host;

/// <summary>How large a parts book may be.</summary>
internal sealed class BookSettings
{
    private const string LargestName = "PartMatch:LargestBook";
    private const int MegabyteBits = 20;

    // A text of .NET has a little less than 2^30 letters.
    private const int MostMegabytes = 1000;

    public BookSettings(IConfiguration configuration)
    {
        if (configuration[LargestName] is not { } largest || string.IsNullOrWhiteSpace(largest))
        {
            return;
        }

        if (int.TryParse(largest, NumberStyles.None, CultureInfo.InvariantCulture, out var megabytes) && megabytes is >= 1 and <= MostMegabytes)
        {
            Limits = new BookZipLimits { MaxBytes = (long)megabytes << MegabyteBits };
        }
        else
        {
            var ordinary = Limits.MaxBytes >> MegabyteBits;
            Refusal = $"{LargestName} is '{largest}', expected a whole number of MiB from 1 to {MostMegabytes}; {ordinary} when left out.";
        }
    }

    /// <summary>What is read of a zip.</summary>
    public BookZipLimits Limits { get; } = new();

    /// <summary>The sentence that says that the setting cannot be; null where it can.</summary>
    public string? Refusal { get; }
}
