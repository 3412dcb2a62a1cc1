using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>One whole answer, meant to be read. Its numbers are checked by hand in the other tests.</summary>
public sealed class InjectorAnswerSnapshotTests
{
    private static readonly JsonSerializerOptions Readable = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower), new FourDigits() },
    };

    [Fact]
    public void Hill_climb_goal()
    {
        var sized = Size(
            HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) },
            Injector("I-5501", "550 cm3/min", deadTimes: Always(0.92m)), Injector("I-6202", "620 cm3/min", fluid: null), Injector("I-8601", "860 cm3/min", deadTimes: Always(1.05m)),
            Injector("I-0001", null));
        InjectorFit fit = new(Headline.Fits, Sureness.Documented, "/api/fit?family=tern-16&variant=ts&position=injector&part=I-8601");
        var ranked = sized with { Injectors = InjectorRanking.Rank(sized.Injectors, new Dictionary<string, InjectorFit> { ["harl:I-8601"] = fit }) };
        Snapshot.Match(JsonSerializer.Serialize(ranked, Readable));
    }

    // The last digits of a double are no part of the answer.
    private sealed class FourDigits : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(decimal.Parse(value.ToString("G4", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture));
    }
}
