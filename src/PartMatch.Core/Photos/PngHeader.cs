using System.Buffers.Binary;

namespace PartMatch.Core.Photos;

/// <summary>The first chunk of a PNG.</summary>
/// <remarks>Source: W3C, PNG Specification (Third Edition), 11.2.1 and, for the lengths of the other chunks, 11.3.</remarks>
internal sealed record PngHeader(int Width, int Height, int Bits, int Colour)
{
    public const int HeaderBytes = 13;
    public const int Palette = 3;

    private const int Grey = 0;
    private const int TrueColour = 2;
    private const int GreyWithAlpha = 4;
    private const int TrueColourWithAlpha = 6;
    private const int MostColours = 256;

    /// <summary>Null with the refusal when the chunk is no header of a picture that is taken.</summary>
    public static PngHeader? Read(ReadOnlySpan<byte> content, out PhotoRefused? refusal)
    {
        if (content.Length != HeaderBytes)
        {
            refusal = PhotoRefusals.Damaged($"a header of {content.Length} bytes", "13 bytes");
            return null;
        }

        var (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(content), BinaryPrimitives.ReadUInt32BigEndian(content[4..]));
        var (bits, colour) = (content[8], content[9]);
        refusal = !IsAllowed(bits, colour) || content[10] != 0 || content[11] != 0 || content[12] > 1
            ? PhotoRefusals.Damaged(
                $"a header with {bits} bits of colour type {colour}, compression {content[10]}, filter {content[11]}, interlace {content[12]}",
                "a combination of the format")
            : PhotoReader.CheckSize(width, height);
        return refusal is null ? new PngHeader((int)width, (int)height, bits, colour) : null;
    }

    /// <summary>Has a chunk that is kept the length that this header gives it, and may it be there?</summary>
    public bool Allows(string chunk, int length, int coloursBefore) => chunk switch
    {
        "PLTE" => Colour is TrueColour or TrueColourWithAlpha or Palette
            && length > 0 && length % 3 == 0 && length / 3 <= (Colour == Palette ? 1 << Bits : MostColours),
        "tRNS" => Colour switch { Grey => length == 2, TrueColour => length == 6, Palette => length > 0 && length <= coloursBefore, _ => false },
        "bKGD" => length == Colour switch { Palette => 1, Grey or GreyWithAlpha => 2, _ => 6 },
        "sBIT" => length == Colour switch { Grey => 1, GreyWithAlpha => 2, TrueColourWithAlpha => 4, _ => 3 },
        "gAMA" => length == 4,
        "cHRM" => length == 32,
        "sRGB" => length == 1,
        _ => false,
    };

    private static bool IsAllowed(byte bits, byte colour) => colour switch
    {
        Grey => bits is 1 or 2 or 4 or 8 or 16,
        Palette => bits is 1 or 2 or 4 or 8,
        TrueColour or GreyWithAlpha or TrueColourWithAlpha => bits is 8 or 16,
        _ => false,
    };
}
