using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Families;
using PartMatch.Core.Photos;
using PartMatch.Storage.Photos;
using PartMatch.Web.Http;

namespace PartMatch.Web.Photos;

internal static class ImageEndpoints
{
    private const string Jpeg = "image/jpeg";

    private const string Png = "image/png";

    /// <summary>A little more than a picture may have, so that one that is slightly too large is told by how much.</summary>
    private const int MaxBodyBytes = PhotoReader.MaxBytes + (256 << 10);

    public static void MapImages(this RouteGroupBuilder api)
    {
        var store = api.MapPost("/images", Store).WithName("StoreImage").WithTags("images")
            .WithSummary("Stores a JPEG or PNG without its metadata, under a name made of its bytes")
            .Accepts<Stream>(Jpeg, Png)
            .WithMetadata(new RequestSizeLimitAttribute(MaxBodyBytes));
        ProblemAnswer.Describe(
            store, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden,
            StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType);
        api.MapGet("/images/{image}", Show).WithName("ShowImage").WithTags("images")
            .WithSummary("A stored picture")
            .Produces(StatusCodes.Status200OK, contentType: Jpeg, additionalContentTypes: Png);
    }

    private static async Task<Results<Created<ImageAnswer>, Refused>> Store(Stream body, ImageStore images, CancellationToken cancellation)
    {
        using var sent = new MemoryStream();
        await body.CopyToAsync(sent, cancellation);
        return PhotoReader.Read(sent.ToArray()) switch
        {
            PhotoRead read => Stored(images.Store(read.Photo), read.Photo),
            PhotoRefused refused => new Refused(Problem.Of("bad-image", new FieldError("image", refused.Found, refused.Expected, refused.Mend))),
            var other => throw new InvalidOperationException($"A picture was read as {other.GetType().Name}, which no answer names."),
        };
    }

    private static Created<ImageAnswer> Stored(string image, Photo photo)
    {
        var link = Permalink.To("/api/images", image).ToString();
        return TypedResults.Created(link, new ImageAnswer(new NothingAsked(), image, photo.Width, photo.Height, photo.Bytes.Length, link));
    }

    private static Results<FileContentHttpResult, Absent> Show(string image, ImageStore images, HttpResponse response)
    {
        if (images.Find(image) is not { } photo)
        {
            return new Absent(new FieldError(
                "image", image, "the name of a picture of the base", "a name is 64 hex digits and .jpg or .png, as the answer to storing it gives it"));
        }

        // Came from outside: opened by itself in a window it may run, load and reach nothing, and its bytes are never taken for anything else.
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.ContentDisposition = "inline";
        response.Headers.CacheControl = "public, max-age=31536000, immutable"; // the name is made of the bytes
        return TypedResults.File(photo.Bytes.ToArray(), photo.Format == PhotoFormat.Jpeg ? Jpeg : Png, entityTag: new EntityTagHeaderValue($"\"{image}\""));
    }
}

/// <summary>A picture that is stored now, or was before.</summary>
/// <param name="Image">Its name, made of its bytes.</param>
/// <param name="Width">Pixels across, as it is shown.</param>
/// <param name="Height">Pixels down, as it is shown.</param>
/// <param name="Bytes">Length of the file without its metadata.</param>
/// <param name="Permalink">Where it is.</param>
public sealed record ImageAnswer(NothingAsked Asked, string Image, int Width, int Height, int Bytes, string Permalink);
