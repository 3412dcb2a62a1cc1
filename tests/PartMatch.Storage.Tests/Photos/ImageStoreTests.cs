using Dapper;
using PartMatch.Core.Photos;
using PartMatch.Storage.Photos;
using Xunit;

namespace PartMatch.Storage.Tests.Photos;

public sealed class ImageStoreTests : IDisposable
{
    private static readonly Photo _photo = new(PhotoFormat.Png, 40, 30, new byte[] { 1, 2, 3 });

    private readonly TempBase _base = new();

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Picture_comes_back_as_it_was_stored()
    {
        var images = Store("2027-05-06T07:08:09Z");
        var image = images.Store(_photo);

        var found = images.Find(image);
        Assert.Equal((PhotoFormat.Png, 40, 30), (found?.Format, found?.Width, found?.Height));
        Assert.Equal(_photo.Bytes.ToArray(), found?.Bytes.ToArray());
        Assert.Equal(["2027-05-06T07:08:09Z"], Times());
    }

    [Fact]
    public void Picture_stored_again_is_there_once_and_stays_as_it_was()
    {
        var image = Store("2027-05-06T07:08:09Z").Store(_photo);

        Assert.Equal(image, Store("2027-05-07T00:00:00Z").Store(_photo));
        Assert.Equal(["2027-05-06T07:08:09Z"], Times());
    }

    [Fact]
    public void Other_bytes_are_another_picture()
    {
        var images = Store("2027-05-06T07:08:09Z");
        var first = images.Store(_photo);
        var second = images.Store(_photo with { Bytes = new byte[] { 1, 2, 4 } });

        Assert.NotEqual(first, second);
        Assert.Equal(2, Times().Count);
        Assert.Equal([1, 2, 4], images.Find(second)?.Bytes.ToArray());
    }

    [Fact]
    public void Unknown_picture_is_not_found()
    {
        var images = Store("2027-05-06T07:08:09Z");
        images.Store(_photo);

        Assert.Null(images.Find(new string('0', 64) + ".png"));
        Assert.Null(images.Find("%"));
    }

    private ImageStore Store(string time) => new(_base.Database, new StoppedClock(time));

    private List<string> Times()
    {
        using var connection = _base.Database.Connect();
        return connection.Query<string>("select stored_at from images").AsList();
    }
}
