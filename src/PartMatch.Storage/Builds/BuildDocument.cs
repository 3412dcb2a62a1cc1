using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartMatch.Core.Builds;

namespace PartMatch.Storage.Builds;

/// <summary>How a document was read; one of the nested cases.</summary>
public abstract record BuildReading
{
    private BuildReading()
    {
    }

    public sealed record Read(Build Build) : BuildReading;

    /// <summary>It is no JSON at all.</summary>
    /// <param name="Line">From 1.</param>
    public sealed record NoJson(long Line, long Byte, string Reason) : BuildReading;

    /// <summary>Members of it are unknown, missing, or of another kind than they have to be.</summary>
    public sealed record Faulty(IReadOnlyList<DocumentFault> Faults) : BuildReading;
}

/// <param name="Field">Where, as <c>wishes[2].position</c>; <c>build</c> for the document itself.</param>
/// <param name="Mend">Null where there is nothing to suggest.</param>
public sealed record DocumentFault(string Field, string Found, string Expected, string? Mend);

/// <summary>
/// A build as one JSON document, the same in the base and as a file: two blanks of indent, line feeds, members in the order of <see cref="Build"/>, what is not
/// recorded left out. The same build is always the same bytes.
/// </summary>
public static class BuildDocument
{
    internal static JsonSerializerOptions Options { get; } = Make();

    /// <summary>The longest document that is taken, in bytes.</summary>
    public const int MaxBytes = 256 << 10;

    public static string Write(Build build) => JsonSerializer.Serialize(build, Options) + "\n";

    /// <summary>Reads strictly: no unknown member, no member twice, no null, no number as text.</summary>
    public static BuildReading Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            var rules = new JsonDocumentOptions { AllowDuplicateProperties = false };
            using var document = JsonDocument.Parse(WithoutMark(utf8), rules);
            var faults = DocumentShape.FaultsOf(document.RootElement, Options.GetTypeInfo(typeof(Build)));
            return faults.Count > 0
                ? new BuildReading.Faulty(faults)
                : new BuildReading.Read(document.Deserialize<Build>(Options)!); // null is a fault of its shape
        }
        catch (JsonException unread)
        {
            return new BuildReading.NoJson(1 + unread.LineNumber ?? 1, 1 + unread.BytePositionInLine ?? 1, Sentence(unread.Message));
        }
    }

    // Editors put the mark of byte order in front of a file; RFC 8259, section 8.1 lets a reader pass over it.
    private static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> utf8) =>
        utf8.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? utf8[3..] : utf8;

    // The library ends its sentence with the place, which is told beside it.
    private static string Sentence(string message) => message.Split(" LineNumber:")[0].Split(" Path:")[0];

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            RespectNullableAnnotations = true,
            WriteIndented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}
