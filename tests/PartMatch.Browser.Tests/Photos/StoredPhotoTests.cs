using System.Text;
using System.Text.Json;
using PartMatch.Browser.Tests.Workshop;
using PartMatch.Core.Tests.Photos;

namespace PartMatch.Browser.Tests.Photos;

/// <summary>A picture taken with the camera on its side, as a browser shows it before and after it was stored.</summary>
public sealed class StoredPhotoTests(Bench bench)
{
    private const string Show =
        """
        async address => {
          const picture = new Image();
          picture.src = address;
          await picture.decode();
          const canvas = document.createElement('canvas');
          [canvas.width, canvas.height] = [picture.naturalWidth, picture.naturalHeight];
          const context = canvas.getContext('2d', {willReadFrequently: true});
          context.drawImage(picture, 0, 0);
          const isBlack = (x, y) => context.getImageData(x, y, 1, 1).data[0] < 128;
          const [right, bottom] = [canvas.width - 1, canvas.height - 1];
          const corners = [isBlack(0, 0), isBlack(right, 0), isBlack(0, bottom), isBlack(right, bottom)].map(black => black ? 'black' : 'white');
          return [canvas.width, canvas.height, ...corners].join(' ');
        }
        """;

    private const string Send =
        """
        async ([type, base64]) => {
          const body = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0));
          const answer = await fetch('/api/images', {method: 'POST', headers: {'Content-Type': type}, body});
          return await answer.text();
        }
        """;

    /// <summary>The stored picture is 16 × 8, its left half black. TIFF 6.0, tag 274: where the first column of the file lies in the picture.</summary>
    /// <param name="shown">Size, then the corners: top left, top right, bottom left, bottom right.</param>
    [Theory]
    [InlineData(1, "16 8 black white black white")] // at the left
    [InlineData(2, "16 8 white black white black")] // at the right
    [InlineData(3, "16 8 white black white black")]
    [InlineData(4, "16 8 black white black white")]
    [InlineData(5, "8 16 black black white white")] // at the top
    [InlineData(6, "8 16 black black white white")]
    [InlineData(7, "8 16 white white black black")] // at the bottom
    [InlineData(8, "8 16 white white black black")]
    public async Task It_stands_upright_and_nothing_of_the_camera_is_left(int orientation, string shown)
    {
        await using var server = new DemoServer();
        await using var sheet = await StartAsync(server);
        var taken = DrawnJpeg.With([.. DrawnJpeg.Exif(orientation), .. DrawnJpeg.Named(0xFE, "somebody")]);

        var stored = await StoreAsync(sheet, taken, "image/jpeg");

        Assert.Equal(shown, await sheet.Page.EvaluateAsync<string>(Show, DataUrl(taken, "image/jpeg")));
        Assert.Equal(shown, await sheet.Page.EvaluateAsync<string>(Show, stored.GetProperty("permalink").GetString()));
        Assert.StartsWith($"{stored.GetProperty("width")} {stored.GetProperty("height")} ", shown, StringComparison.Ordinal);
        await AssertNothingLeftAsync(server, stored);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Progressive_picture_is_shown_as_before()
    {
        await using var server = new DemoServer();
        await using var sheet = await StartAsync(server);

        var stored = await StoreAsync(sheet, DrawnJpeg.Progressive, "image/jpeg");

        Assert.Equal("16 8 black white black white", await sheet.Page.EvaluateAsync<string>(Show, stored.GetProperty("permalink").GetString()));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Png_with_camera_data_stands_as_before()
    {
        await using var server = new DemoServer();
        await using var sheet = await StartAsync(server);
        var taken = DrawnPng.With([.. DrawnPng.Chunk("eXIf", DrawnJpeg.Tiff(6)), .. DrawnPng.Chunk("tEXt", "Author\0somebody"u8.ToArray())]);

        var stored = await StoreAsync(sheet, taken, "image/png");

        Assert.Equal("2 4 black black white white", await sheet.Page.EvaluateAsync<string>(Show, DataUrl(taken, "image/png")));
        Assert.Equal("2 4 black black white white", await sheet.Page.EvaluateAsync<string>(Show, stored.GetProperty("permalink").GetString()));
        await AssertNothingLeftAsync(server, stored);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Opened_in_a_window_of_its_own_it_is_shown()
    {
        await using var server = new DemoServer();
        await using var sheet = await StartAsync(server);
        var stored = await StoreAsync(sheet, DrawnJpeg.Plain, "image/jpeg");

        await sheet.GoAsync(stored.GetProperty("permalink").GetString() ?? "");

        Assert.Equal(16, await sheet.Page.EvaluateAsync<int>("document.images[0].naturalWidth"));

        // The page that the browser makes around a picture is styled in place; that the policy forbids it costs only the grey behind the picture.
        Assert.All(sheet.Complaints, complaint => Assert.Contains("inline style", complaint, StringComparison.Ordinal));
    }

    private async Task<Sheet> StartAsync(DemoServer server)
    {
        Chromium.MustBeThere();
        return await bench.OpenAsync(server.Start(), "problems.html", Look.Light);
    }

    private static async Task<JsonElement> StoreAsync(Sheet sheet, byte[] picture, string type) =>
        JsonDocument.Parse(await sheet.Page.EvaluateAsync<string>(Send, new[] { type, Convert.ToBase64String(picture) })).RootElement;

    private static async Task AssertNothingLeftAsync(DemoServer server, JsonElement stored)
    {
        using var client = server.CreateClient();
        var address = new Uri(stored.GetProperty("permalink").GetString() ?? "", UriKind.Relative);
        var bytes = await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken);
        Assert.DoesNotContain("somebody", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
    }

    private static string DataUrl(byte[] picture, string type) => $"data:{type};base64,{Convert.ToBase64String(picture)}";
}
