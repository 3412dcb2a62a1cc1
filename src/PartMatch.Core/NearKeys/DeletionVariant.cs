using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>What is left of a key, and which two of its characters were taken away, where it were two.</summary>
/// <remarks>
/// Two keys of one length within two edits have a rest in common for which the same places were taken, or neighbours of them where two characters are
/// swapped; what else has the same rest is far more, and further than two edits. So the eight bits by which an entry is told from others in its bucket are
/// those of the hash with the two places added: then places that nearly agree are a small difference.
/// </remarks>
internal readonly struct DeletionVariant
{
    private const int Shift = DeletionTable.PlaceBits;

    // Both differences are from 0 to 3 when counted from one less than the own place.
    private const uint FarApart = 0xCCu << Shift;

    private readonly uint _bits;
    private readonly bool _ofTwo;

    /// <summary>Of a key with one character taken away or none.</summary>
    public DeletionVariant(ulong hash) => (Hash, _bits) = (hash, (uint)hash << Shift);

    /// <summary>Of a key with two characters taken away.</summary>
    public DeletionVariant(ulong hash, int first, int second) => (Hash, _bits, _ofTwo) = (hash, ((uint)hash + ((uint)first << 4) + (uint)second) << Shift, true);

    public ulong Hash { get; }

    /// <summary>The entry of a key with this rest.</summary>
    public uint EntryOf(int place) => _bits | (uint)place;

    /// <summary>Which of these entries can be of a key near one that has this rest: a bit for each.</summary>
    public uint CanBeNear(Vector256<uint> entries)
    {
        if (!_ofTwo)
        {
            return byte.MaxValue; // one of another length, or with a character added and another lost: any two places
        }

        var apart = entries - Vector256.Create(_bits - (0x11u << Shift));
        var near = Vector256.Equals(apart & Vector256.Create(FarApart), Vector256<uint>.Zero);
        var shorter = Vector256.Equals((entries ^ Vector256.Create((uint)Hash << Shift)) >> Shift, Vector256<uint>.Zero);
        return (near | shorter).ExtractMostSignificantBits();
    }
}
