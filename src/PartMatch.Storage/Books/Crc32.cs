namespace PartMatch.Storage.Books;

/// <summary>The check sum of a zip entry. The framework's reader hands out damaged content without comparing it.</summary>
/// <remarks>Source: RFC 1952, section 8 (polynomial 0xEDB88320, reflected, table of 256).</remarks>
internal static class Crc32
{
    private static readonly uint[] _table = [.. Enumerable.Range(0, 256).Select(Remainder)];

    public static uint Of(ReadOnlySpan<byte> content)
    {
        var sum = 0xFFFFFFFF;
        foreach (var octet in content)
        {
            sum = _table[(sum ^ octet) & 0xFF] ^ (sum >> 8);
        }

        return ~sum;
    }

    private static uint Remainder(int octet)
    {
        var remainder = (uint)octet;
        for (var bit = 0; bit < 8; bit++)
        {
            remainder = (remainder & 1) == 1 ? 0xEDB88320 ^ (remainder >> 1) : remainder >> 1;
        }

        return remainder;
    }
}
