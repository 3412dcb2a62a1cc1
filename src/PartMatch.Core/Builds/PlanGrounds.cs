namespace PartMatch.Core.Builds;

/// <summary>Gives each wish and fact its index, once.</summary>
internal sealed class PlanGrounds
{
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly List<BuildGround> _all = [];

    public IReadOnlyList<BuildGround> All => _all;

    public int Of(string name, string text, string mend)
    {
        if (!_index.TryGetValue(name, out var index))
        {
            _index[name] = index = _all.Count;
            _all.Add(new BuildGround(name, text, mend));
        }

        return index;
    }
}
