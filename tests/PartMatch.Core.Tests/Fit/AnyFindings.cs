using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Tests.Catalogue;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Sets of findings about the part W-2, drawn at random: of any grade and outcome, some retracted, some copied, some from elsewhere or made with another shaft.</summary>
internal static class AnyFindings
{
    private const int Sources = 5;

    /// <summary>W-1 is fitted on both variants, W-3 on neither. Nothing but findings says anything of W-2.</summary>
    public static TestFamily Nothing() => WithWheelsAndShafts(wheel => wheel.Length("bore"), shaft => shaft.Length("diameter"))
        .Wheel("W-1").Wheel("W-2").Wheel("W-3").Shaft("S-1").Shaft("S-2")
        .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1").Fitted("lark", "shaft", "S-1").Fitted("swift", "shaft", "S-1");

    /// <summary>As above, where W-2 is a newer number of W-1 and its bore, as a document has it, does not go on: identity and computed reasoning contradict each other.</summary>
    public static TestFamily Contradicting() => WithWheelsAndShafts(wheel => wheel.Length("bore").Rule("bore", Effect.Stops)
        .Rule("bore", Effect.Alters), shaft => shaft.Length("diameter"))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12))).Wheel("W-3").Shaft("S-1").Shaft("S-2").Replaced("W-1", "W-2")
        .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1").Fitted("lark", "shaft", "S-1").Fitted("swift", "shaft", "S-1");

    public static Gen<FindingOutcome> Outcomes => Gen.Enum<FindingOutcome>();

    public static Gen<EvidenceGrade> Grades => Gen.Enum<EvidenceGrade>();

    public static Gen<Finding[]> Of() => Gen.Select(
        Gen.Select(Grades, Gen.Int[0, 4], Gen.Int[-2, Sources - 1]).Array[Sources],
        Gen.Select(Gen.Int[0, Sources - 1], Outcomes, Gen.Int[0, 3], Gen.Int[0, 4]).Array[0, 7],
        (sources, found) =>
        {
            var evidence = Told(sources);
            return found.Select((one, index) => One($"f-{index}", evidence[one.Item1], one.Item2, one.Item3 == 0 ? "swift" : "lark", one.Item4 switch
            {
                0 => Serials(1000, null),
                1 => Serials(null, 500),
                _ => Span.Always,
            }, one.Item3 == 1)).ToArray();
        });

    public static Finding One(string code, Evidence by, FindingOutcome outcome, string on = "lark", Span? span = null, bool withAnotherShaft = false) => new(
        code, Id("W-2"), on, "wheel", outcome is FindingOutcome.Same or FindingOutcome.Differently ? Axis.Runs : Axis.Mounts, outcome, span ?? Span.Always,
        withAnotherShaft ? new Dictionary<string, string?> { ["shaft"] = Id("S-2") } : new Dictionary<string, string?>(), by, null);

    /// <summary>Sources of which one in five is retracted, and which may be copies of an earlier one.</summary>
    private static Evidence[] Told((EvidenceGrade Grade, int Retracted, int From)[] sources)
    {
        var told = new List<Evidence>();
        foreach (var (index, (grade, retracted, from)) in sources.Index())
        {
            var original = from >= 0 && from < index ? told[from] : null;
            var code = $"ev-{index}";
            told.Add(new Evidence(code, grade, null, null, $"sheet {index}", original?.Code, retracted == 0 ? "2026-05-01" : null,
                null)
            { Root = original?.Root ?? $"finch-9/{code}" });
        }

        return [.. told];
    }
}
