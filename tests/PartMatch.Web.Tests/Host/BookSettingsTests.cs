using Microsoft.Extensions.Configuration;
using PartMatch.Web.Host;

namespace PartMatch.Web.Tests.Host;

public sealed class BookSettingsTests
{
    [Fact]
    public void Nothing_said_is_512_MiB() => Assert.Equal((512L << 20, null), Of(null));

    [Theory]
    [InlineData("1", 1L << 20)]
    [InlineData("1000", 1000L << 20)]
    public void Whole_number_of_MiB_within_the_bounds_is_taken(string value, long bytes) => Assert.Equal((bytes, null), Of(value));

    [Theory]
    [InlineData("0")]
    [InlineData("1001")]
    [InlineData("1.5")]
    [InlineData("-1")]
    [InlineData("512 MB")]
    public void Anything_else_refuses_to_start(string value) => Assert.Equal(
        $"PartMatch:LargestBook is '{value}', expected a whole number of MiB from 1 to 1000; 512 when left out.", Of(value).Refusal);

    private static (long Bytes, string? Refusal) Of(string? value)
    {
        var settings = new BookSettings(new ConfigurationBuilder().AddInMemoryCollection([new("PartMatch:LargestBook", value)]).Build());
        return (settings.Limits.MaxBytes, settings.Refusal);
    }
}
