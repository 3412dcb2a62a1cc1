using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>How one part stands to what the maker fitted.</summary>
public enum IdentityRelation
{
    FittedHere,
    NewerNumber,
    OlderNumber,
    SameBothWays,
    AnotherPart,
    UnknownNumber,
}

/// <summary>How the part asked about stands to what the maker fitted.</summary>
/// <param name="Fitted">What the maker fitted there; empty when nothing or not recorded.</param>
/// <param name="Chain">The supersessions from the fitted part to the one asked about, in order.</param>
public sealed record IdentityAnswer(IdentityRelation Relation, IReadOnlyList<string> Fitted, IReadOnlyList<ChainLink> Chain);

/// <summary>One step of a chain of supersessions, as walked: from what is fitted towards what is asked about.</summary>
public sealed record ChainLink(string From, string To, SupersessionWay Way, int Quantity, IReadOnlyList<string> With, string Text);
