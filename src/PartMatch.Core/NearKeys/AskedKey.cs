using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>A key that is asked about, laid out so that its distance to any stored one takes five comparisons of sixteen bytes.</summary>
/// <remarks>
/// Within two edits a character of the one key can only stand for a character of the other that is at most two places away. So five diagonals are enough; each
/// is one bit for each character that agrees. How far one gets on each with no, one and two edits is then counted in runs of bits: E. Ukkonen, Information and
/// Control 64:100-118, 1985, with the swap of neighbours added. Further on the same diagonal with as many edits is never worse.
/// </remarks>
internal readonly struct AskedKey
{
    /// <summary>The longest one that can be within two edits of a stored one.</summary>
    public const int MaxLength = ByteKey.MaxLength + 2;

    private const byte BeyondEnd = 0xFF; // as no byte of a stored key

    private readonly int _length;
    private readonly Vector128<byte> _twoBack;
    private readonly Vector128<byte> _oneBack;
    private readonly Vector128<byte> _same;
    private readonly Vector128<byte> _oneOn;
    private readonly Vector128<byte> _twoOn;

    public AskedKey(ReadOnlySpan<byte> key)
    {
        Span<byte> padded = stackalloc byte[2 + MaxLength + 2];
        padded.Fill(BeyondEnd);
        key.CopyTo(padded[2..]);
        _length = key.Length;
        _twoOn = Vector128.Create<byte>(padded);
        _oneOn = Vector128.Create<byte>(padded[1..]);
        _same = Vector128.Create<byte>(padded[2..]);
        _oneBack = Vector128.Create<byte>(padded[3..]);
        _twoBack = Vector128.Create<byte>(padded[4..]);
    }

    /// <summary>Edits to a stored key.</summary>
    /// <param name="limit">At most 2.</param>
    /// <returns>The distance when it is at most <paramref name="limit"/>, otherwise more than that.</returns>
    public int EditsTo(Vector128<byte> stored, int limit)
    {
        var longer = ByteKey.LengthOf(stored) - _length;
        if (Math.Abs(longer) > limit)
        {
            return limit + 1;
        }

        // Bit i of each: does character i of the asked key agree with the stored one at i, or so many places on or back?
        var same = Agreeing(_same, stored);
        var none = Run(same, 0);
        if (longer == 0 && none >= _length)
        {
            return 0;
        }

        var (oneOn, oneBack) = (Agreeing(_oneOn, stored) >> 1, Agreeing(_oneBack, stored) << 1);
        var one = Run(same, none + Step(none, oneOn, oneBack));
        var oneAdded = Run(oneOn, none);
        var oneLost = Run(oneBack, none + 1);
        if ((longer == 0 ? one : longer == 1 ? oneAdded : longer == -1 ? oneLost : -1) >= _length)
        {
            return 1;
        }

        return limit < 2 ? 2 : longer switch
        {
            0 => Reached(same, Math.Max(one + Step(one, oneOn, oneBack), Math.Max(oneLost, oneAdded + 1))),
            1 => Reached(oneOn, Math.Max(one, oneAdded + Step(oneAdded, Agreeing(_twoOn, stored) >> 2, same))),
            -1 => Reached(oneBack, Math.Max(one + 1, oneLost + Step(oneLost, same, Agreeing(_twoBack, stored) << 2))),
            2 => Reached(Agreeing(_twoOn, stored) >> 2, oneAdded),
            _ => Reached(Agreeing(_twoBack, stored) << 2, oneLost + 1),
        };
    }

    private static ulong Agreeing(Vector128<byte> shifted, Vector128<byte> stored) => Vector128.Equals(shifted, stored).ExtractMostSignificantBits();

    private static int Run(ulong diagonal, int from) => from + (int)ulong.TrailingZeroCount(~(diagonal >> from));

    /// <summary>Two characters in one edit where they are swapped there, else one: the first agrees with the one behind, the second with the one before.</summary>
    private static int Step(int at, ulong on, ulong back) => 1 + (int)((on >> at) & (back >> at >> 1) & 1);

    private int Reached(ulong diagonal, int from) => Run(diagonal, from) >= _length ? 2 : 3;
}
