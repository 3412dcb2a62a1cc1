using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;

namespace PartMatch.Web.Parts;

/// <summary>What a number in a question names: one part, none that the base knows, or several that it can mean.</summary>
/// <param name="Written">The number as written, after its maker where one was given.</param>
/// <param name="Candidates">The parts it can mean: own numbers first, each group ordered by part.</param>
/// <param name="Identifies">Does the number name a part? A casting mark narrows, never identifies, even where only one part with it is known.</param>
internal sealed record NamedPart(string Written, IReadOnlyList<Part> Candidates, bool Identifies)
{
    /// <summary>The part, or null when no book knows the number. Only where it is not ambiguous.</summary>
    public Part? Part => Candidates.Count == 1 ? Candidates[0] : null;

    public bool IsAmbiguous => Candidates.Count > 1 || (Candidates.Count == 1 && !Identifies);

    /// <param name="written">A number, or <c>maker:number</c>.</param>
    /// <param name="maker">Only numbers of this maker; null for any.</param>
    public static NamedPart Find(string written, string? maker, PartStore parts)
    {
        var (writtenMaker, number) = Split(written);
        var givenMaker = writtenMaker ?? maker;
        var candidates = parts.FindByNumber(number, givenMaker);
        var key = NumberKey.Of(number);
        var identifies = candidates.Any(part => part.Key == key || parts.FindRecord(part.Id)?.Numbers.Any(known => known.Key == key && known.Identifies) is true);
        return new NamedPart(givenMaker is null ? number : $"{givenMaker}:{number}", candidates, identifies);
    }

    /// <summary>Divides <c>maker:number</c> at the first colon; a number without one has no maker.</summary>
    public static (string? Maker, string Number) Split(string written) =>
        written.IndexOf(':', StringComparison.Ordinal) is > 0 and var colon ? (written[..colon], written[(colon + 1)..]) : (null, written);

    /// <summary>One error for each part that the number can mean.</summary>
    public Problem ToProblem(string field) => Problem.Of(
        "ambiguous-number",
        [
            .. Candidates.Select(part => new FieldError(
                field, Written, $"{part.Id} ({part.Name})", $"add maker={part.Maker}, or ask with {field}={part.Id}")),
        ]) with
    {
        Detail = Identifies ? null : "A casting mark or a grade stands on many parts: it narrows, never identifies. Ask with the part's own number.",
    };
}
