namespace PartMatch.Core.LookAlikes;

/// <summary>One error on the way from the key that was meant to the key that was read.</summary>
/// <param name="Meant">Characters of the meant key it uses up.</param>
/// <param name="Read">Characters of the read key it makes.</param>
internal readonly record struct MixUpStep(MixUpClass Class, int Meant, int Read)
{
    private static readonly MixUpStep _omission = new(MixUpClass.Omission, 1, 0);
    private static readonly MixUpStep _addition = new(MixUpClass.Addition, 0, 1);

    public static MixUpStep Substitution { get; } = new(MixUpClass.Substitution, 1, 1);

    /// <summary>Adds the errors that change two places at once and could have happened at the beginning of the two texts, whose first characters differ.</summary>
    public static void CollectAcross(ReadOnlySpan<char> meant, ReadOnlySpan<char> read, List<MixUpStep> steps)
    {
        CollectPairs(meant, read, steps);
        CollectJumps(meant, read, steps);
    }

    /// <summary>Adds the errors that could have happened at the beginning of what is left of the two keys, in a fixed order.</summary>
    public static void Collect(ReadOnlySpan<char> meant, ReadOnlySpan<char> read, List<MixUpStep> steps)
    {
        if (!meant.IsEmpty && !read.IsEmpty && meant[0] != read[0])
        {
            steps.Add(Substitution);
            CollectAcross(meant, read, steps);
        }

        if (!meant.IsEmpty)
        {
            steps.Add(_omission);
        }

        if (!read.IsEmpty)
        {
            steps.Add(_addition);
        }
    }

    private static void CollectPairs(ReadOnlySpan<char> meant, ReadOnlySpan<char> read, List<MixUpStep> steps)
    {
        if (meant.Length < 2 || read.Length < 2)
        {
            return;
        }

        if (meant[0] == read[1] && meant[1] == read[0])
        {
            steps.Add(new MixUpStep(MixUpClass.AdjacentTransposition, 2, 2));
        }

        if (meant[0] == meant[1] && read[0] == read[1])
        {
            steps.Add(new MixUpStep(MixUpClass.Twin, 2, 2));
        }

        if (SoundsAlike(meant, read) || SoundsAlike(read, meant))
        {
            steps.Add(new MixUpStep(MixUpClass.Phonetic, 2, 2));
        }
    }

    private static void CollectJumps(ReadOnlySpan<char> meant, ReadOnlySpan<char> read, List<MixUpStep> steps)
    {
        if (meant.Length < 3 || read.Length < 3 || meant[1] != read[1])
        {
            return;
        }

        if (meant[0] == read[2] && meant[2] == read[0])
        {
            steps.Add(new MixUpStep(MixUpClass.JumpTransposition, 3, 3));
        }

        if (meant[0] == meant[2] && read[0] == read[2])
        {
            steps.Add(new MixUpStep(MixUpClass.JumpTwin, 3, 3));
        }
    }

    // Sixty and sixteen: a0 and 1a for a = 2 … 9 (Verhoeff 1969).
    private static bool SoundsAlike(ReadOnlySpan<char> tens, ReadOnlySpan<char> teens) =>
        tens[0] is >= '2' and <= '9' && tens[1] == '0' && teens[0] == '1' && teens[1] == tens[0];
}
