using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Yard;

/// <summary>What a plan still needs, as one looks for it in a yard: on which engines it sits, how it is recognised, what it can be taken for.</summary>
/// <param name="Parts">In the order of the plan's lines; empty where there is no plan.</param>
/// <param name="Tools">What the checks ask for, besides what takes the parts off.</param>
public sealed record YardList(
    PlanAsked Asked, PlanStatus Status, string HeadlineText, IReadOnlyList<YardPart> Parts, IReadOnlyList<YardTool> Tools, IReadOnlyList<Caution> Cautions)
{
    public string Permalink { get; init; } = "";
}

/// <summary>What one position needs.</summary>
/// <param name="Pieces">Null where the engine's number of them is not recorded.</param>
/// <param name="BuyNew">Why it is not pulled from a scrap engine; null where it can be.</param>
/// <param name="Planned">What the plan pays for it, without sending: what pulling it saves at most.</param>
/// <param name="From">From whom the plan buys it.</param>
/// <param name="Condition">Of what it buys; null where that is of several conditions.</param>
/// <param name="Access">What has to come off until it is seen on a complete engine; null where that is not recorded.</param>
/// <param name="OneOf">One part; several where one of them is chosen by measurement.</param>
public sealed record YardPart(
    string Position, string Name, string Group, int? Pieces, string? BuyNew, Money? Planned, string? From, ItemCondition? Condition, decimal? AccessMinutes,
    string? Access, IReadOnlyList<YardFind> OneOf)
{
    /// <summary>Is what the plan pays a share of one price, for several positions together? Then pulling this one alone saves nothing.</summary>
    public bool IsShare { get; init; }
}

/// <summary>A part to look for.</summary>
/// <param name="Numbers">What may stand on it or on its wrapper, its own number first.</param>
/// <param name="SitsOn">Engines on which the maker fitted it.</param>
/// <param name="Recognise">Checks that must come out so, in this order; where nothing can be taken for it, what is quickest to see of it.</param>
/// <param name="LookAlikes">Of medium and high danger, the most dangerous first.</param>
public sealed record YardFind(
    string Part, string Number, string Name, IReadOnlyList<YardNumber> Numbers, IReadOnlyList<string> SitsOn, IReadOnlyList<Confirmation> Recognise,
    IReadOnlyList<YardLookAlike> LookAlikes);

/// <param name="Identifies">A casting mark or a grade narrows and does not name the part.</param>
public sealed record YardNumber(string Written, NumberSort Sort, bool Identifies);

/// <param name="DangerText">How easily the two are mixed up, and what comes of it.</param>
/// <param name="TellApartText">The cheapest check, or that nothing recorded separates them.</param>
/// <param name="ToldApart">A check of the yard separates the two.</param>
public sealed record YardLookAlike(
    string Part, string Number, string? Name, DangerLevel Danger, string DangerText, string TellApartText, bool ToldApart, IReadOnlyList<string> SitsOn);

/// <summary>A tool that checks ask for.</summary>
/// <param name="For">Positions for whose parts it is wanted.</param>
public sealed record YardTool(Method Tool, IReadOnlyList<string> For);
