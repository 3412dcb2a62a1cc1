using BenchmarkDotNet.Attributes;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Benchmarks.Listings;

/// <summary>Building the finder of a million numbers; beside it a dictionary of the same keys. What is allocated is nearly what is kept.</summary>
[MemoryDiagnoser]
public class NumberFinderBuilding
{
    private PartNumber[] _numbers = [];

    [GlobalSetup]
    public void Prepare() => _numbers = NumberCatalogue.Numbers(1_000_000);

    [Benchmark(Baseline = true)]
    public object Build_finder() => new NumberFinder(_numbers);

    [Benchmark]
    public object Build_dictionary()
    {
        var byKey = new Dictionary<string, PartNumber>(StringComparer.Ordinal);
        foreach (var number in _numbers)
        {
            byKey[number.Key] = number;
        }

        return byKey;
    }
}
