using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>A figure that somebody published, with its limits and where it comes from; base units.</summary>
/// <param name="Source">Author, title, page, year; or "from memory" with how sure; or "common practice, no source".</param>
public sealed record Figure(Spread Spread, string Source)
{
    public Figure(double low, double expected, double high, string source)
        : this(new Spread(low, expected, high), source)
    {
    }
}
