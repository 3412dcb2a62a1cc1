namespace PartMatch.Core.Catalogue;

/// <summary>What somebody found of two parts that can be taken for one another.</summary>
public enum PairJudgement
{
    /// <summary>One part under two numbers.</summary>
    SamePart,

    /// <summary>The mix-up does harm.</summary>
    Trap,

    /// <summary>Two parts, and the mix-up does none.</summary>
    Harmless,
}

/// <summary>What somebody found of two parts that can be taken for one another; the order of the two does not count.</summary>
public sealed record JudgedPair(string PartA, string PartB, PairJudgement Judgement, Evidence? Evidence, string? Note);
