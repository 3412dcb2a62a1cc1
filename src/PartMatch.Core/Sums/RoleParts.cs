using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Sums;

/// <summary>Which position of a family plays a role in the sums, and which parts sit there.</summary>
public static class RoleParts
{
    /// <summary>The position of that role, the first where several have it; null where the family has none.</summary>
    public static Position? FindPosition(FamilyFacts facts, string role) => facts.Positions.FirstOrDefault(position => position.Role == role);

    /// <summary>The wheel or phaser that sits on a camshaft: the one that mates with it by a joint, else the only one there is.</summary>
    public static Position? FindWheel(FamilyFacts facts, Position camshaft)
    {
        List<Position> wheels = [.. facts.Positions.Where(position => position.Role == Roles.CamSprocket)];
        return wheels.Find(wheel => facts.JointsAt(wheel.Code).Any(joint => joint.Left.Position == camshaft.Code || joint.Right.Position == camshaft.Code))
            ?? (wheels.Count == 1 ? wheels[0] : null);
    }

    /// <summary>The parts that the maker fitted there over the years, in ordinal order; empty when nothing is, or nothing is recorded.</summary>
    /// <param name="on">Only on the engines of that stretch; null for all of them.</param>
    public static IReadOnlyList<Part> Fitted(FamilyFacts facts, string variant, Position? position, EngineSpan? on = null) => position is null
        ? []
        : [.. facts.FitmentsAt(variant, position.Code).Where(fitment => on?.IsIn(fitment.Span) != false).Select(fitment =>
            fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal).Select(facts.FindPart).OfType<Part>()];

    /// <summary>A part of a question, as the answer shows it.</summary>
    public static RolePart Shown(FamilyFacts facts, string variant, Position position, Part part)
    {
        var isFitted = Fitted(facts, variant, position).Any(fitted => fitted.Id == part.Id);
        return new RolePart(position.Role ?? "", position.Code, part.Id, part.Name, isFitted)
        {
            Fit = isFitted ? null : new Permalink("/api/fit").With("family", facts.Family.Code).With("variant", variant).With("position",
                position.Code).With("part", part.Id).ToString(),
            Headline = isFitted ? null : FitCheck.Decide(facts, new FitQuestion(variant, position.Code, part)).Headline,
        };
    }
}

/// <summary>A part that a sum was reckoned with.</summary>
/// <param name="IsFitted">Did the maker fit it there?</param>
public sealed record RolePart(string Role, string Position, string Part, string Name, bool IsFitted)
{
    /// <summary>Will it fit: the address of the whole answer; absent for what the maker fitted.</summary>
    public string? Fit { get; init; }

    public Headline? Headline { get; init; }
}
