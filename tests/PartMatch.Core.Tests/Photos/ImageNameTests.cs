using PartMatch.Core.Photos;
using Xunit;

namespace PartMatch.Core.Tests.Photos;

public sealed class ImageNameTests
{
    // FIPS 180-2, appendix B.1: SHA-256 of "abc".
    private const string Abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Fact]
    public void Name_is_the_hash_and_the_format()
    {
        Assert.Equal(Abc + ".jpg", ImageName.Of(new Photo(PhotoFormat.Jpeg, 1, 1, "abc"u8.ToArray())));
        Assert.Equal(Abc + ".png", ImageName.Of(new Photo(PhotoFormat.Png, 1, 1, "abc"u8.ToArray())));
    }

    [Theory]
    [InlineData(Abc + ".jpg", PhotoFormat.Jpeg)]
    [InlineData(Abc + ".png", PhotoFormat.Png)]
    [InlineData(Abc + ".gif", null)]
    [InlineData(Abc, null)]
    [InlineData(Abc + ".jpeg", null)]
    [InlineData("a" + Abc + ".jpg", null)]
    [InlineData("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD.jpg", null)]
    [InlineData("../a7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad.jpg", null)]
    [InlineData("", null)]
    public void Format_stands_in_a_name_that_is_one(string name, PhotoFormat? format) => Assert.Equal(format, ImageName.FindFormat(name));
}
