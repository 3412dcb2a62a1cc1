using System.Collections.Frozen;

namespace PartMatch.Core.LookAlikes;

/// <summary>How often people make which error in a written code: the share of each class among all codes written wrongly.</summary>
/// <remarks>
/// Source: J. Verhoeff, Error Detecting Decimal Codes, Mathematical Centre Tract 29, 1969, as quoted in later texts: substitution 79.1 %,
/// adjacent transposition 10.2 %, jump transposition 0.8 %, twin 0.5 %, phonetic 0.5 % (the 0.3 % of jump twins is from memory). Omissions and
/// additions together: the low end, 10 %, of the 10–20 % that N. R. Wagner, The Laws of Cryptography, 2002, gives for Verhoeff's studies;
/// halving it between the two is ours. Two tables being mixed, the shares add up to 1.014; their order is what is claimed.
/// </remarks>
public static class ErrorShares
{
    public const double Substitution = 0.791;

    /// <summary>How many written codes are wrong at all. Ours, no source: small, so that one error of any class is likelier than two.</summary>
    public const double WrongCodes = 0.01;

    private static readonly FrozenDictionary<MixUpClass, double> _shares = new Dictionary<MixUpClass, double>
    {
        [MixUpClass.Substitution] = Substitution,
        [MixUpClass.AdjacentTransposition] = 0.102,
        [MixUpClass.Omission] = 0.05,
        [MixUpClass.Addition] = 0.05,
        [MixUpClass.JumpTransposition] = 0.008,
        [MixUpClass.Twin] = 0.005,
        [MixUpClass.Phonetic] = 0.005,
        [MixUpClass.JumpTwin] = 0.003,
    }.ToFrozenDictionary();

    /// <summary>The share of a class that the studies counted.</summary>
    /// <exception cref="KeyNotFoundException">For the classes that are ours: they are made of these.</exception>
    public static double Of(MixUpClass counted) => _shares[counted];

    /// <summary>
    /// Later characters are mistaken more readily than earlier ones: 0.8 for the first, rising evenly to 1 for the last.
    /// Ours, no source; kept so narrow that it never overturns the published order of the classes.
    /// </summary>
    /// <param name="index">Place in the key, from 0.</param>
    /// <param name="length">Characters in the key.</param>
    public static double PlaceWeight(int index, int length) =>
        length < 2 ? 1 : 0.8 + (0.2 * Math.Min(index, length - 1) / (length - 1));
}
