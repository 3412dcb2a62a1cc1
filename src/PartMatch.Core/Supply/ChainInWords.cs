using PartMatch.Core.Injectors;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>The chain in words: is it enough, which link gives out first, and of which is nothing known?</summary>
internal static class ChainInWords
{
    public static string Of(IReadOnlyList<SupplyLink> links, double goalW)
    {
        var open = links.Where(link => link is { Enough: Enough.NotKnown, Power: null }).ToList();
        return $"{Verdict(links)} {First(links, goalW)}{(open.Count == 0 ? "" : $" Not known: {Names(open)}.")}";
    }

    private static string Verdict(IReadOnlyList<SupplyLink> links)
    {
        var failing = links.Where(link => link.Enough == Enough.No).ToList();
        var unsure = links.Where(link => link is { Enough: Enough.NotKnown, Power: not null }).ToList();
        if (failing.Count > 0)
        {
            return $"The chain is not enough: {Names(failing)}.{(unsure.Count == 0 ? "" : $" Perhaps not: {Names(unsure)}.")}";
        }

        return unsure.Count > 0 ? $"The chain is perhaps enough, and not in the worst case: {Names(unsure)}."
            : links.All(link => link.Enough == Enough.Yes) ? "The chain is enough, even in the worst case."
            : links.Any(link => link is { Enough: Enough.Yes }) ? "What is known of the chain is enough, even in the worst case."
            : "Whether the chain is enough is not known.";
    }

    private static string First(IReadOnlyList<SupplyLink> links, double goalW)
    {
        var limits = links.Where(link => link.Power is not null).OrderBy(link => link.Power?.Expected).ToList();
        if (limits is not [{ Power: { } least }, ..])
        {
            return "Which link gives out first is not known.";
        }

        // Who may carry less than the first at its best may be the first.
        var first = limits.Where(link => link.Power?.Low <= least.High).ToList();
        var names = $"{(links.Any(IsOpenEnded) ? "Of the links whose limit is known the" : "The")} {string.Join(" or the ", first.Select(link => link.Link))}";
        var goal = $"the goal is {SumText.In(SumText.Kilowatts, goalW, "0.##")}.";
        return first is [{ } only]
            ? $"{names} give{(only.Link == "injectors" ? "" : "s")} out first, at {least.Text}; {goal}"
            : $"{names} give out first, their ranges overlap: {string.Join(", ", first.Select(link => $"{link.Link} at {link.Power?.Text}"))}; {goal}";
    }

    // Regulator and return give out at no power of their own; a line that loses nothing has no limit.
    private static bool IsOpenEnded(SupplyLink link) =>
        link.Power is null && (link.Link is "injectors" or "pump" || link is { Link: "line", Enough: not Enough.Yes });

    private static string Names(IEnumerable<SupplyLink> links) => string.Join(", ", links.Select(link => link.Link));
}
