namespace PartMatch.Core.LookAlikes;

/// <summary>The kind of error that turns one number into another.</summary>
/// <remarks>Source of the division: J. Verhoeff, Error Detecting Decimal Codes, Mathematical Centre Tract 29, 1969; the first and the last two are ours.</remarks>
public enum MixUpClass
{
    /// <summary>Only characters of one folding class differ: 2075 and 2O75.</summary>
    LookAlikeCharacter,

    /// <summary>One character is another: 2075 and 2079.</summary>
    Substitution,

    /// <summary>Two neighbours swapped: 2075 and 2705.</summary>
    AdjacentTransposition,

    /// <summary>The other number lacks one character: 2075 and 275.</summary>
    Omission,

    /// <summary>The other number has one character more: 2075 and 20775.</summary>
    Addition,

    /// <summary>Two characters swapped across a third: 205 and 502.</summary>
    JumpTransposition,

    /// <summary>A pair of equal characters is another pair: 77 and 00.</summary>
    Twin,

    /// <summary>The same across a third character: 131 and 232.</summary>
    JumpTwin,

    /// <summary>Digits that sound alike: sixty and sixteen.</summary>
    Phonetic,

    /// <summary>Only the letter or two after the last digit differ, which is where makers count their changes: 2075-A and 2075-B.</summary>
    SuffixOnly,

    /// <summary>No single error explains it.</summary>
    TwoErrors,
}

/// <summary>A place where two keys differ.</summary>
/// <param name="Index">Place in the key asked about, the first character being 0.</param>
/// <param name="Asked">What stands there in the key asked about; empty where the other key has a character more.</param>
/// <param name="Other">What the other key has instead; empty where it lacks the character.</param>
public sealed record MixUpPlace(int Index, string Asked, string Other);

/// <summary>How one key is taken for another.</summary>
/// <param name="Class">Null when the keys are equal.</param>
/// <param name="Cost">0 for equal keys; the larger, the less likely the mix-up. Two decimals.</param>
/// <param name="At">Where they differ, from left to right.</param>
public sealed record MixUp(MixUpClass? Class, double Cost, IReadOnlyList<MixUpPlace> At);
