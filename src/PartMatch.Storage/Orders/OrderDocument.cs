using System.Text.Json;
using PartMatch.Core.Orders;
using PartMatch.Storage.Builds;

namespace PartMatch.Storage.Orders;

/// <summary>How a document of orders was read; one of the nested cases.</summary>
public abstract record OrderReading<T>
{
    private OrderReading()
    {
    }

    public sealed record Read(T Document) : OrderReading<T>;

    /// <summary>It is no JSON at all.</summary>
    public sealed record NoJson(string Reason) : OrderReading<T>;

    public sealed record Faulty(IReadOnlyList<DocumentFault> Faults) : OrderReading<T>;
}

/// <summary>What is told of orders, as JSON documents: read as strictly as a build.</summary>
public static class OrderDocument
{
    public const int MaxBytes = 64 << 10;

    internal static string Write(OrderEvent did) => JsonSerializer.Serialize(did, BuildDocument.Options);

    /// <typeparam name="T"><see cref="OrderAsked"/>, <see cref="OrderEvent"/> or another document of this feature.</typeparam>
    public static OrderReading<T> Read<T>(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8, new JsonDocumentOptions { AllowDuplicateProperties = false });
            var faults = DocumentShape.FaultsOf(document.RootElement, BuildDocument.Options.GetTypeInfo(typeof(T)));
            return faults.Count > 0
                ? new OrderReading<T>.Faulty(faults)
                : new OrderReading<T>.Read(document.Deserialize<T>(BuildDocument.Options)!); // null is a fault of its shape
        }
        catch (JsonException unread)
        {
            return new OrderReading<T>.NoJson(unread.Message);
        }
    }
}
