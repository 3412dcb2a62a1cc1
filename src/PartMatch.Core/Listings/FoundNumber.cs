using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>A number in the text of a listing.</summary>
/// <param name="Passage">Index of the passage it stands in.</param>
/// <param name="Start">Of its first character in the passage's text.</param>
/// <param name="Length">In characters of the text, separators inside it included.</param>
/// <param name="Written">As it stands there.</param>
/// <param name="Key">The number key as read; for a known number the key in the base.</param>
/// <param name="Known">The numbers of the base with that key, by maker and part; empty for one that only has the shape of a number.</param>
/// <param name="Read">What had to be done to read it as that key.</param>
/// <param name="Within">The longer code it stands inside; null where it stands by itself.</param>
/// <param name="Role">What the words around it make of it.</param>
public sealed record FoundNumber(
    int Passage, int Start, int Length, string Written, string Key, IReadOnlyList<PartNumber> Known, NumberReading Read, string? Within, NumberRole Role);

/// <summary>What had to be done to read a number, least first.</summary>
public enum NumberReading
{
    /// <summary>Stands as in the base, but for case and separators.</summary>
    AsWritten,

    /// <summary>Broken by spaces or line breaks where the base has none, or only its end written, after another number ("…-B/-C").</summary>
    Broken,

    /// <summary>With foreign letters or full-width forms that look like Latin ones (UTS #39, NFKC).</summary>
    ForeignLetters,

    /// <summary>With O for 0, I for 1 or the like: may as well be another number.</summary>
    LookAlikeCharacters,
}

/// <summary>What the words around a number make of it.</summary>
public enum NumberRole
{
    /// <summary>The number of what is sold: stated outright, in the title, or after words such as "part number".</summary>
    Sold,

    /// <summary>What it is said to replace.</summary>
    Replaces,

    /// <summary>What it is said to fit or to be for.</summary>
    Fits,

    /// <summary>What it is said not to be or not to fit.</summary>
    NotThis,

    /// <summary>The seller's own number.</summary>
    SellersOwn,

    /// <summary>Anywhere else.</summary>
    Mentioned,
}
