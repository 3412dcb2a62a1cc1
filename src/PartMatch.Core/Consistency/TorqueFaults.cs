using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tightening;

namespace PartMatch.Core.Consistency;

/// <summary>Sources that tighten one fastener of the same engines to different ends: one speaks of another engine, of other threads, or is wrong.</summary>
internal static class TorqueFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts)
    {
        var rows = new FaultRows(facts);
        foreach (var variant in facts.Variants)
        {
            foreach (var position in facts.Positions)
            {
                var sources = TorqueSource.FindDisagreeing(facts, variant.Code, position.Code);
                if (sources.Count == 0)
                {
                    continue;
                }

                yield return new Fault(
                    FaultSort.TorquesDisagree, $"{position.Name} on {variant.Code}: sources disagree on how it is tightened",
                    $"{FitWording.AsSentence(string.Join("; ", sources.Select(Says)))}. Nothing is averaged, and none of them is taken for right.",
                    position.Code, [variant.Code], [.. sources.SelectMany(source => source.Passes).Select(rows.Of)], null,
                    "Look at the maker's document again, and at the threads each source means, dry or oiled. Retract the one that is wrong; "
                    + "where the maker changed it, give each its serial numbers or build dates.");
            }
        }
    }

    private static string Says(TorqueSource source)
    {
        var threads = source.Passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null) is { } told
            ? $"threads {FitWording.InWords(Codes.Of(told))}" : "threads not told";
        return $"{source.EndText}{FaultWords.Limits(source.Span)}, {threads} ({FaultWords.Source(source.Evidence)})";
    }
}
