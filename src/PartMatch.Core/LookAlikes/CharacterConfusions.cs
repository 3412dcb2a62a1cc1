namespace PartMatch.Core.LookAlikes;

/// <summary>Which part of all substitutions falls to a pair of characters.</summary>
/// <remarks>
/// Source: a Bell Laboratories study quoted in ISMP Medication Safety Alert, 12 January 2000: I/1 (l/1), O/0, Z/2 and 1/7 together caused over 50 % of
/// character misidentifications. Keys are upper case, so l/1 is here L/1. The division of the other half is ours, no source: 30 % to the
/// remaining look-alike characters and 2/7, 20 % to all other pairs. A class is not divided among its pairs: this is a score that keeps the
/// published order, not a probability that adds up to one.
/// </remarks>
public static class CharacterConfusions
{
    private const double Measured = 0.5;
    private const double LooksAlike = 0.3;
    private const double Other = 0.2;

    /// <summary>The weight of reading one character as the other; the same in both directions.</summary>
    public static double Weight(char meant, char read) => (meant < read ? (meant, read) : (read, meant)) switch
    {
        ('1', 'I') or ('1', 'L') or ('0', 'O') or ('2', 'Z') or ('1', '7') => Measured,
        ('2', '7') => LooksAlike,
        var (low, high) => FoldingClasses.Fold(low) == FoldingClasses.Fold(high) ? LooksAlike : Other,
    };
}
