using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>Why a bolt cannot be reckoned with, and what would mend it.</summary>
internal sealed record BoltUnknown(string Code, string Field, string Reason, string Found, string Expected, string Mend)
{
    private const string Threads = "an ISO metric thread, diameter × pitch";
    private const string ForExample = "for example thread=M10×1.25";

    public NotJudged Said => new(Code, Reason);

    public SumRefused Refused => new(Code, Field, Reason, Found, Expected, Mend);

    public static BoltUnknown NotAFastener(FastenerPlace place) => new(
        "not-a-fastener", "position", $"{place.Position.Name} is no fastener: the pull in a bolt says nothing about it. "
            + (place.Facts.TorquesAt(place.Variant, place.Position.Code).Any() ? "How it is tightened is recorded: leave the torque out to see it."
                : "How it is tightened is not recorded either."),
        place.Position.Code, "a position with the role fastener", "choose a fastener, or type its thread");

    public static BoltUnknown NotMetric(string written) => new(
        "thread-not-metric", "thread", $"{written} is not read as an ISO metric thread, and the sums hold for those only.", written, Threads, ForExample);

    public static BoltUnknown Class(string stamped) => new(
        "class-not-known", "class", $"Class {stamped} is recorded, and its strength is not held here.", stamped,
        $"one of {string.Join(", ", PropertyClass.All.Select(one => one.Code))}", "give class= if the head bears one of them");

    /// <summary>It is not recorded, disputed, or the parts that the maker fitted there over the years differ.</summary>
    public static BoltUnknown Thread(IReadOnlyList<Part> parts, string feature)
    {
        string Of(Part part) => ValueSelection.Of(part, feature) is StatedValue stated ? stated.Text : "not known";
        var found = parts.Count == 0 ? "nothing" : string.Join("; ", parts.Select(part => $"{part.Number}: {Of(part)}"));
        return parts.Count > 1
            ? new("thread-not-known", "part", "The maker fitted several parts there over the years, and their threads are not one.", found, "one part",
                "name the part with part=")
            : new("thread-not-known", "thread", "The thread is not recorded, or its sources exclude each other.", found, Threads, ForExample);
    }
}
