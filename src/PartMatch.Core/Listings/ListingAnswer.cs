using System.Text.Json.Serialization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Listings;

/// <summary>Is what this listing sells the part that is needed?</summary>
/// <param name="Headline">One for the page.</param>
/// <param name="Because">Why, the weightiest first.</param>
/// <param name="Offers">What could be bought, in the order of the listing.</param>
/// <param name="Numbers">Every number of the listing, each once, those that are sold first, then in the order of the listing.</param>
/// <param name="Contradictions">Where the listing says two things of one.</param>
/// <param name="Missing">What the assembly lacks of what is needed; empty where none is needed.</param>
/// <param name="Ask">What to ask the seller, ready to copy; null where nothing is open.</param>
/// <param name="Warnings">What was odd about the document.</param>
public sealed record ListingAnswer(
    ListingAsked Asked,
    ListingHeadline Headline,
    string HeadlineText,
    IReadOnlyList<string> Because,
    string? Title,
    IReadOnlyList<JudgedOffer> Offers,
    IReadOnlyList<JudgedNumber> Numbers,
    IReadOnlyList<Contradiction> Contradictions,
    IReadOnlyList<string> Missing,
    SellerQuestions? Ask,
    IReadOnlyList<ListingWarning> Warnings,
    IReadOnlyList<Caution> Cautions)
{
    /// <summary>What a reader of it sees, up to 60,000 characters: what is kept with an offer.</summary>
    public string Text { get; init; } = "";

    /// <summary>Where the page says that it stands on the web, or was saved from; null where it does not say. Nothing is fetched from it.</summary>
    public string? Address { get; init; }

    /// <summary>The address to which the same document is sent again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>What the listing was held against.</summary>
/// <param name="Sha256">Of the document as received; the key under which its text is kept with an offer.</param>
public sealed record ListingAsked(
    string? Family, string? Variant, string? Position, string? Built, long? Serial, AssemblyLevel? Level, ListingFormat Format, int Bytes, string Sha256);

public enum ListingHeadline
{
    Buy,
    AskFirst,
    LeaveIt,
}

/// <summary>One offer, with what it is judged to be.</summary>
/// <param name="Numbers">Keys of the numbers that it sells.</param>
/// <param name="UnitPrice">Price by pieces, rounded half to even to the currency's digits; null unless the price is plain and there are several pieces.</param>
/// <param name="Buyable">Can it be bought as it stands: priced, in stock, not a range?</param>
/// <param name="WhyNot">Why it cannot; null where it can.</param>
/// <param name="Untested">The words that say that nobody has tried whether it works; null where none do.</param>
public sealed record JudgedOffer(
    string? Name, IReadOnlyList<string> Numbers, ReadOffer Offer, Money? UnitPrice, bool Buyable, string? WhyNot, string? Untested,
    ListingHeadline Headline, string Because);

/// <summary>One number, with what it is.</summary>
/// <param name="Where">Every place it stands, in words.</param>
/// <param name="Part">Null for a number in no book.</param>
/// <param name="Fit">Null where no position was asked about, or the number is unknown; the whole answer is behind <paramref name="FitLink"/>.</param>
/// <param name="Danger">Of taking it for the part that is needed; null where it is none of its look-alikes.</param>
/// <param name="DangerText">Its two factors, ease and harm, with the words for both; null with the danger.</param>
/// <param name="Nearest">The nearest known numbers of an unknown one.</param>
/// <param name="Holds">Contents of a kit or assembly, each with its own verdict.</param>
/// <param name="Text">The verdict in a sentence, with its reason.</param>
public sealed record JudgedNumber(
    string Written, string NumberKey, NumberRole Role, NumberReading Read, string? Within, IReadOnlyList<string> Where, NumberVerdict Verdict, string Text,
    string? Part, string? Name, Headline? Fit, Sureness? Sureness, string? FitLink, DangerLevel? Danger, string? DangerText,
    IReadOnlyList<NearestNumber> Nearest, IReadOnlyList<HeldPart> Holds)
{
    /// <summary>Pieces that the place needs of it; null where that is not recorded, or where the number is of a packet.</summary>
    [JsonIgnore]
    public int? Needed { get; init; }
}

/// <summary>What a number turned out to be, against the question.</summary>
public enum NumberVerdict
{
    /// <summary>What the maker fitted there, or linked to it both ways.</summary>
    RightOne,
    NewerNumber,
    OlderNumber,

    /// <summary>Another part that can be taken for the one needed.</summary>
    LookAlike,

    /// <summary>In the base, and none of the above; whether it fits is said beside it.</summary>
    AnotherKnownPart,

    /// <summary>A casting mark, a grade, or a number of several makers: it stands on several parts, so it narrows and never identifies.</summary>
    NarrowsOnly,

    /// <summary>In no book, on a page that says it fits or replaces a known one.</summary>
    ClaimedOnly,
    Unknown,
}

/// <summary>A part inside a kit or an assembly.</summary>
public sealed record HeldPart(string Part, string? Name, int? Quantity, Certainty Certainty, NumberVerdict Verdict, string Text);

/// <summary>Two statements of a listing that cannot both be true.</summary>
/// <param name="One">Where, and what it says there.</param>
public sealed record Contradiction(string Code, string One, string Other, string Text);

/// <summary>What to ask.</summary>
/// <param name="Text">The whole message.</param>
public sealed record SellerQuestions(IReadOnlyList<string> Questions, string Text);
