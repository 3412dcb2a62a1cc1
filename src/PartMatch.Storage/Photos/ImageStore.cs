using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Photos;

namespace PartMatch.Storage.Photos;

/// <summary>The pictures of the base.</summary>
public sealed class ImageStore(Database database, TimeProvider clock)
{
    /// <summary>Stores a picture; one that is there already stays as it is.</summary>
    /// <returns>Its name.</returns>
    /// <exception cref="DatabaseException">The base could not be written, for example because the disk is full; nothing is stored.</exception>
    public string Store(Photo photo)
    {
        try
        {
            using var connection = database.Connect();
            return Insert(connection, photo, clock.GetUtcNow());
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    /// <summary>The same inside a change of its own.</summary>
    internal static string Insert(SqliteConnection connection, Photo photo, DateTimeOffset at)
    {
        var image = ImageName.Of(photo);
        connection.Execute(
            """
            insert into images (image, bytes, width, height, stored_at)
            values (@image, @bytes, @Width, @Height, @storedAt)
            on conflict (image) do nothing
            """,
            new
            {
                image,
                bytes = photo.Bytes.ToArray(),
                photo.Width,
                photo.Height,
                storedAt = at.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture),
            });
        return image;
    }

    /// <summary>The picture of that name, or null when the base has none.</summary>
    public Photo? Find(string image)
    {
        if (ImageName.FindFormat(image) is not { } format)
        {
            return null;
        }

        using var connection = database.Connect();
        var row = connection.QuerySingleOrDefault<ImageRow>("select bytes, width, height from images where image = @image", new { image });
        return row is null ? null : new Photo(format, (int)row.Width, (int)row.Height, row.Bytes);
    }

    private sealed record ImageRow(byte[] Bytes, long Width, long Height);
}
