using System.Runtime.CompilerServices;

namespace PartMatch.Core.NearKeys;

/// <summary>The places one search has come by, each once, in the order it came by them. One for each thread, kept for the next search.</summary>
/// <remarks>A bit for each place tells whether it is there; taking out what is there is all it takes to be empty again.</remarks>
internal sealed class PlaceSet
{
    [ThreadStatic]
    private static PlaceSet? _ofThread;

    private ulong[] _bits = [];
    private uint[] _places = new uint[1 << 10];
    private int _count;

    /// <summary>The empty set of this thread, until it is asked for again.</summary>
    /// <param name="bound">Every place is below it.</param>
    public static PlaceSet Empty(int bound)
    {
        var set = _ofThread ??= new PlaceSet();
        foreach (var place in set.Places)
        {
            set._bits[place >> 6] = 0;
        }

        set._count = 0;
        if (set._bits.Length < (bound + 63) / 64)
        {
            set._bits = new ulong[(bound + 63) / 64];
        }

        return set;
    }

    public ReadOnlySpan<uint> Places => _places.AsSpan(0, _count);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(uint place)
    {
        ref var word = ref _bits[place >> 6];
        var bit = 1UL << (int)(place & 63);
        if ((word & bit) == 0)
        {
            word |= bit;
            if (_count == _places.Length)
            {
                Array.Resize(ref _places, _count * 2);
            }

            _places[_count++] = place;
        }
    }
}
