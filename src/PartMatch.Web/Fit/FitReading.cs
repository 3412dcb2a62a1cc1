using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Fit;

/// <summary>A fit request whose names and numbers have been looked up; one of the nested cases.</summary>
internal abstract record FitReading
{
    private FitReading()
    {
    }

    /// <summary>Everything it names was found; the part itself may be in no book.</summary>
    public sealed record Ready(FamilyFacts Facts, FitQuestion Question) : FitReading;

    /// <summary>The family, a variant or a position is not in the base.</summary>
    public sealed record NotHeld(Absent Answer) : FitReading;

    /// <summary>A number means several parts, or a neighbour is in no book.</summary>
    public sealed record Unclear(Refused Answer) : FitReading;

    public static FitReading Read(FitRequest request, FamilyStore families, PartStore parts, ItemStore items)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return new NotHeld(KnownNames.NoFamily(request.Family ?? "", families));
        }

        if (FindUnknown(request, facts) is { } absent)
        {
            return new NotHeld(absent);
        }

        var item = string.IsNullOrEmpty(request.Item) ? null : items.Find(facts.Family.Code, CodeOf(request.Item, facts));
        if (item is null && !string.IsNullOrEmpty(request.Item))
        {
            return new NotHeld(new Absent(new FieldError(
                "item", request.Item, $"the code of an item of {facts.Family.Code}", $"they are listed at /api/items?family={facts.Family.Code}")));
        }

        var named = string.IsNullOrEmpty(request.Part) || request.IsAboutNothing ? null : NamedPart.Find(request.Part, request.Maker, parts);
        var neighbours = request.Neighbours.Select(pair => (pair.Position, Named: pair.Part == Part.None ? null : NamedPart.Find(pair.Part, null, parts))).ToList();
        var problem = named?.IsAmbiguous == true
            ? named.ToProblem("part")
            : neighbours.Select(pair => FindProblem(pair.Named, pair.Position)).FirstOrDefault(found => found is not null);
        if (problem is not null)
        {
            return new Unclear(new Refused(problem));
        }

        var beside = neighbours.ToDictionary(pair => pair.Position, pair => pair.Named?.Part, StringComparer.Ordinal);
        return new Ready(facts, Ask(request, PartOf(facts, request, item, named), named?.Written, beside) with { Item = item });
    }

    /// <summary>Answers name an item with its book; within a family its code is enough.</summary>
    private static string CodeOf(string item, FamilyFacts facts) =>
        item.StartsWith(facts.Family.Code + "/", StringComparison.Ordinal) ? item[(facts.Family.Code.Length + 1)..] : item;

    private static Part? PartOf(FamilyFacts facts, FitRequest request, Item? item, NamedPart? named) =>
        item?.Part is { } claimed ? facts.FindPart(claimed) : request.IsAboutNothing ? NothingAt(facts, request) : named?.Part;

    private static Part? NothingAt(FamilyFacts facts, FitRequest request) =>
        facts.FindPosition(request.Position ?? "") is { } position ? Part.Nothing(position.Kind) : null;

    private static FitQuestion Ask(FitRequest request, Part? part, string? written, IReadOnlyDictionary<string, Part?> neighbours) => new(
        request.Variant ?? "", request.Position ?? "", part, written, string.IsNullOrEmpty(request.From) ? null : request.From,
        BuildDate.Find(request.Built ?? ""), CommonRules.FindWhole(request.Serial), neighbours);

    private static Absent? FindUnknown(FitRequest request, FamilyFacts facts)
    {
        string[] positions = [request.Position ?? "", .. request.Neighbours.Select(pair => pair.Position)];
        return facts.FindVariant(request.Variant ?? "") is null ? KnownNames.NoVariant(request.Variant ?? "", facts)
            : !string.IsNullOrEmpty(request.From) && facts.FindVariant(request.From) is null ? KnownNames.NoVariant(request.From, facts, "from")
            : Array.FindIndex(positions, position => facts.FindPosition(position) is null) is >= 0 and var at
                ? KnownNames.NoPosition(positions[at], facts, at == 0 ? "position" : "with")
            : null;
    }

    // The part asked about may be unknown, that is an answer; a neighbour that nobody knows would silently be no neighbour.
    private static Problem? FindProblem(NamedPart? neighbour, string position) => neighbour?.Candidates.Count switch
    {
        0 => Problem.Of("bad-question", new FieldError("with", $"{position}={neighbour.Written}", "a number that the base knows, or none",
            "look it up under Find a part (/api/parts?q=)")),
        null or 1 => null,
        _ => neighbour.ToProblem("with"),
    };
}
