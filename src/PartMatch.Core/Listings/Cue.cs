namespace PartMatch.Core.Listings;

/// <summary>Words of a text that make something of a number near them.</summary>
/// <param name="Start">In the text.</param>
/// <param name="End">Behind them.</param>
internal sealed record Cue(int Start, int End, CueKind Kind);

/// <summary>What words make of a number near them.</summary>
internal enum CueKind
{
    /// <summary>"fits", "suitable for": as far as the clause goes.</summary>
    Fits,

    /// <summary>"for": what stands right behind it, no more.</summary>
    For,
    Replaces,

    /// <summary>"part number", "casting".</summary>
    Sold,

    /// <summary>"our ref", "item no".</summary>
    SellersOwn,

    /// <summary>"not", "without": what stands right behind it, or the "fits" near it.</summary>
    Not,

    /// <summary>"replaced by": what stands there now is neither sold nor replaced. "looks like", "probably": it is not said to be that.</summary>
    Mentions,

    /// <summary>"but".</summary>
    But,

    /// <summary>"it is", "it is really": the number right behind it is what is sold, unless other words say otherwise.</summary>
    Is,

    /// <summary>"tel", "VIN", "EAN": a number, but no part's.</summary>
    OtherNumber,

    /// <summary>Looks like one of the others and is none: "not only", "for sale".</summary>
    Nothing,
}
