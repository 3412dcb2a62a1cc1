namespace PartMatch.Benchmarks.Numbers;

/// <summary>SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014): unlike the generator of .NET it will never give other numbers.</summary>
internal sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    public int Below(int bound) => (int)(Next() % (ulong)bound);

    public char Letter(string letters) => letters[Below(letters.Length)];

    private ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        var mixed = _state;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }
}
