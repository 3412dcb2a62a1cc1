using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>A key of at most sixteen characters as the sixteen bytes of one vector register, nought behind its end.</summary>
internal static class ByteKey
{
    public const int MaxLength = 16;

    // Stands for every character that a byte has no room for. No stored key has it, so it agrees with nothing.
    private const byte Other = 0xFE;

    /// <summary>Can it be stored so?</summary>
    public static bool Fits(ReadOnlySpan<char> key) => key.Length <= MaxLength && !key.ContainsAnyExceptInRange('\u0001', (char)(Other - 1));

    public static void Write(ReadOnlySpan<char> key, Span<byte> bytes)
    {
        for (var index = 0; index < key.Length; index++)
        {
            bytes[index] = key[index] is > '\0' and < (char)Other ? (byte)key[index] : Other;
        }
    }

    public static Vector128<byte> Of(ReadOnlySpan<char> key)
    {
        Span<byte> bytes = stackalloc byte[MaxLength];
        bytes.Clear();
        Write(key, bytes);
        return Vector128.Create<byte>(bytes);
    }

    public static int LengthOf(Vector128<byte> key) =>
        int.TrailingZeroCount((int)(Vector128.Equals(key, Vector128<byte>.Zero).ExtractMostSignificantBits() | (1u << MaxLength)));
}
