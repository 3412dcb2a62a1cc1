namespace PartMatch.Core.Listings;

/// <summary>How reading a listing ended.</summary>
public abstract record ListingReading
{
    private ListingReading()
    {
    }

    /// <summary>It could be read, wholly or with what <see cref="ReadListing.Warnings"/> says was left out.</summary>
    public sealed record Read(ReadListing Listing) : ListingReading;

    /// <summary>It is no listing that can be read, or it is over a bound.</summary>
    /// <param name="Found">What it is: "12 MB", "elements 40,000 deep", "a picture (PNG)".</param>
    /// <param name="Expected">The bound or the format.</param>
    /// <param name="Mend">What the user can do instead: "select the text on the page and paste it".</param>
    public sealed record Unreadable(string Found, string Expected, string Mend) : ListingReading;
}

/// <summary>What a listing says, before anything is made of it.</summary>
/// <param name="Title">Of the page; null where there is none.</param>
/// <param name="Language">As the page declares it (BCP 47); null when it does not.</param>
/// <param name="Products">Things described, in the order of the document; structured statements first, then rows of tables, then the page as a whole where
/// nothing else was found.</param>
/// <param name="Passages">Every piece of text that can hold a number: the title, what is stated product by product, terms, then what is seen in the order of
/// the document.</param>
/// <param name="VisibleText">What a reader sees, paragraphs by line breaks; what is kept with an offer.</param>
/// <param name="Warnings">What was odd, left out, or only guessed at.</param>
public sealed record ReadListing(
    string? Title, string? Language, IReadOnlyList<ReadProduct> Products, IReadOnlyList<Passage> Passages, string VisibleText,
        IReadOnlyList<ListingWarning> Warnings)
{
    /// <summary>What the head of the page declares to other sites; null where it declares none.</summary>
    public ReadPrice? DeclaredPrice { get; init; }

    /// <summary>Where the page says that it stands; null where it does not. Nothing is ever fetched from it.</summary>
    public string? Address { get; init; }
}

/// <summary>Something odd about a listing that its reader should know.</summary>
/// <param name="Code">Kebab-case; listed in the API's documentation.</param>
public sealed record ListingWarning(string Code, string Text);

/// <summary>A piece of text, and where on the page it stands.</summary>
/// <param name="Where">For people: "title", "JSON-LD mpn", "table row 3, Number", "caption of a picture".</param>
/// <param name="Product">Index of the product it belongs to; null for text of the page as a whole.</param>
/// <param name="Stated">The property that says outright what the text is; null for running text.</param>
public sealed record Passage(PassagePlace Place, string Where, string Text, int? Product = null, NumberProperty? Stated = null);

/// <summary>Where a piece of text stands.</summary>
public enum PassagePlace
{
    Title,
    Heading,

    /// <summary>A value of JSON-LD, microdata or RDFa.</summary>
    Property,
    TableCell,

    /// <summary>What a definition list says of a term.</summary>
    Definition,

    /// <summary>The caption, alternative text or file name of a picture.</summary>
    Picture,

    /// <summary>Words of an earlier letter, or of somebody else: nothing in them is sold.</summary>
    Quoted,
    Text,
}

/// <summary>A property of schema.org, or a column or term that says the same, whose value is a number.</summary>
public enum NumberProperty
{
    /// <summary>The maker's part number.</summary>
    Mpn,

    /// <summary>The seller's own.</summary>
    Sku,
    Gtin,
    ProductId,

    /// <summary>A column or term headed number, part number, reference or the like.</summary>
    Number,

    /// <summary>What the thing is said to be for: isAccessoryOrSparePartFor, "fits", "suitable for".</summary>
    Fits,

    /// <summary>What the thing is said to stand in for: "replaces", predecessorOf, successorOf.</summary>
    Replaces,
}
