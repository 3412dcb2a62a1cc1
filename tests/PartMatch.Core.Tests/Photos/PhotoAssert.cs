using PartMatch.Core.Photos;
using Xunit;

namespace PartMatch.Core.Tests.Photos;

internal static class PhotoAssert
{
    public static Photo Taken(byte[] file)
    {
        var outcome = PhotoReader.Read(file);
        return Assert.IsType<PhotoRead>(outcome, exactMatch: true).Photo;
    }

    /// <summary>Refused for this reason, with all three parts of the sentence.</summary>
    public static PhotoRefused Refused(PhotoFault fault, byte[] file)
    {
        var refused = Assert.IsType<PhotoRefused>(PhotoReader.Read(file));
        Assert.Equal(fault, refused.Fault);
        Assert.All([refused.Found, refused.Expected, refused.Mend], part => Assert.False(string.IsNullOrWhiteSpace(part)));
        return refused;
    }
}
