using PartMatch.Core.Measures;

namespace PartMatch.Core.Catalogue;

/// <summary>A kind of part; it owns the list of features that matter for that kind.</summary>
/// <param name="CanAlterRunning">Can a wrong one change how the engine runs?</param>
/// <param name="Reviewed">Is its feature list complete?</param>
/// <param name="Cautions">Codes of <see cref="Cautions"/>.</param>
/// <param name="Features">Ordered by code; the built-in choice <c>present</c> is not among them.</param>
public sealed record Kind(
    string Code,
    string Name,
    bool CanAlterRunning,
    bool Reviewed,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<Feature> Features,
    IReadOnlyList<Rule> Rules,
    IReadOnlyList<Check> Checks)
{
    /// <summary>The standard photographs to ask of a seller, ordered by code.</summary>
    public IReadOnlyList<Shot> Shots { get; init; } = [];

    public Feature? FindFeature(string code) =>
        code == Feature.Present.Code ? Feature.Present : Features.FirstOrDefault(feature => feature.Code == code);

    public Rule? FindRule(string feature, Effect effect) =>
        Rules.FirstOrDefault(rule => rule.Feature == feature && rule.Effect == effect);
}

/// <summary>A measurable or visible property of a part.</summary>
/// <param name="Unit">Declared unit of a quantity; null for counts and choices.</param>
public sealed record Feature(string Code, string Name, FeatureType Type, Unit? Unit, IReadOnlyList<string> Choices)
{
    /// <summary>The built-in choice of every kind: is there a part at all? <c>no</c> where the fitment is none.</summary>
    public static Feature Present { get; } = new("present", "fitted at all", FeatureType.Choice, null, ["no", "yes"]);
}

/// <summary>What an unmet relation of a feature means.</summary>
/// <param name="Allowance">How far beyond the maker's own spread is still accepted, in the base unit; 0 for counts and choices.</param>
/// <param name="Work">The work that mends it, for <see cref="Effect.Work"/> only.</param>
public sealed record Rule(string Feature, Effect Effect, Relation Relation, decimal Allowance, string? Work, Consequence Consequence, string? Note);

/// <summary>A way to observe a feature.</summary>
/// <param name="Minutes">Time it takes.</param>
/// <param name="Uncertainty">Of the reading, in the base unit; null when not recorded or not a quantity.</param>
public sealed record Check(string Feature, Method Method, decimal Minutes, decimal? Uncertainty, string? How);

/// <summary>A standard photograph of a kind of part.</summary>
/// <param name="Name">What it shows, a short noun phrase: "whole part beside a ruler".</param>
/// <param name="Shows">Features of the kind that can be read from it, in ordinal order; each has a photo or label check.</param>
/// <param name="How">One imperative sentence to the seller; null when not recorded.</param>
public sealed record Shot(string Code, string Name, IReadOnlyList<string> Shows, string? How);

/// <summary>A machining or fitting operation.</summary>
public sealed record Work(
    string Code, string Name, decimal? Minutes, decimal? Days, Money? Price, string? Who, IReadOnlyList<string> NeedsFirst, IReadOnlyList<string> Changes, bool? CanBeUndone, IReadOnlyList<string> Cautions);
