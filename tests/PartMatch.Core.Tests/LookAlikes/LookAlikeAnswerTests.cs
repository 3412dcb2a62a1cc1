using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Snapshooter.Xunit3;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class LookAlikeAnswerTests
{
    private static readonly JsonSerializerOptions _asShown = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    // One row of every sort: a trap by number and eye, by eye alone, a look-alike character, an older number, a stranger.
    [Fact]
    public void Whole_answer_as_JSON_shows_it()
    {
        var pumpB = WrenFamily.Pump("harl:H-26-1147-B", "short", "clockwise", 12.0m);
        var pumpC = WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12.0m, blades: 6);
        var pumpE = WrenFamily.Pump(WrenFamily.PumpE, "short", "anticlockwise", 12.05m, blades: 7);
        var twin = WrenFamily.Pump("harl:H-90-0001-A", "short", "clockwise", 14.0m);
        var dowel = WrenFamily.Part("harl:H-26-II47-C", "dowel", "Dowel");
        Part[] parts = [pumpB, pumpC, pumpE, dowel, twin];
        var family = WrenFamily.Wren(
            parts,
            [WrenFamily.Fitted("wa", "coolant-pump", pumpC.Id), WrenFamily.Fitted("wb", "coolant-pump", pumpE.Id)],
            [WrenFamily.Replaced(pumpB.Id, pumpC.Id, SupersessionWay.One, new Span(null, null, null, 41206), "wa")],
            [new JudgedPair(pumpC.Id, pumpE.Id, PairJudgement.Trap, WrenFamily.Document, "Pumps backwards and overheats.")]);
        var facts = WrenFamily.Facts([family, WrenFamily.Neighbour], [.. parts, WrenFamily.Neighbour.GetPart(WrenFamily.Spring)]);

        var answer = LookAlikeSearch.Decide(facts, new LookAlikeQuestion("H-26-1147-C", Family: "wren-9"));

        Snapshot.Match(JsonSerializer.Serialize(answer, _asShown));
    }
}
