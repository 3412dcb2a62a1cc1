using BenchmarkDotNet.Attributes;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;

namespace PartMatch.Benchmarks.Injectors;

/// <summary>Putting 10,000 sized injectors in order, with the reason of each; beside it sorting the same keys without reasons.</summary>
[MemoryDiagnoser]
public class RankingBenchmarks
{
    private const int Injectors = 10_000;

    private IReadOnlyList<SizedInjector> _sized = [];
    private Dictionary<string, InjectorFit> _fits = [];

    [GlobalSetup]
    public void Prepare()
    {
        _sized = ((InjectorsSized)InjectorSizing.Size(InjectorCatalogue.Goal, InjectorCatalogue.Of(Injectors), InjectorCatalogue.Engine)).Injectors;
        Headline[] headlines = [.. Enum.GetValues<Headline>()];
        _fits = _sized.Select((injector, index) => (injector.Part, Fit: new InjectorFit(headlines[index % headlines.Length], Sureness.Documented, "/api/fit")))
            .ToDictionary(one => one.Part, one => one.Fit);
    }

    [Benchmark]
    public object Rank_10_000() => InjectorRanking.Rank(_sized, _fits);

    /// <summary>The floor: the same order by an array of keys, no reasons, no records.</summary>
    [Benchmark(Baseline = true)]
    public object Sort_10_000_keys()
    {
        var keys = new (Enough Enough, Headline Headline, double Flow, string Part)[_sized.Count];
        for (var index = 0; index < keys.Length; index++)
        {
            var injector = _sized[index];
            keys[index] = (injector.Enough, _fits[injector.Part].Headline, injector.Enough == Enough.Yes ? injector.Flow!.Expected : 0, injector.Part);
        }

        Array.Sort(keys, (left, right) =>
        {
            var order = left.Enough.CompareTo(right.Enough);
            order = order != 0 ? order : left.Headline.CompareTo(right.Headline);
            order = order != 0 ? order : left.Flow.CompareTo(right.Flow);
            return order != 0 ? order : string.CompareOrdinal(left.Part, right.Part);
        });
        return keys;
    }
}
