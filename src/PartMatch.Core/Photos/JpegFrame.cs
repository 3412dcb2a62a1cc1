using System.Buffers.Binary;

namespace PartMatch.Core.Photos;

/// <summary>The frame header: how large the picture is, and which components its scans may name.</summary>
/// <remarks>Source: ITU-T T.81, B.2.2 and B.2.3.</remarks>
internal sealed record JpegFrame(bool IsProgressive, int Width, int Height, IReadOnlyList<JpegComponent> Components)
{
    private const int HeaderBytes = 6;
    private const int ComponentBytes = 3;
    private const int BitsShown = 8;
    private const int LastCoefficient = 63;

    /// <summary>Null with the refusal when the header is not one that browsers show.</summary>
    public static JpegFrame? Read(byte marker, ReadOnlySpan<byte> header, out PhotoRefused? refusal)
    {
        if (header.Length < HeaderBytes || header.Length != HeaderBytes + (ComponentBytes * header[5]))
        {
            refusal = PhotoRefusals.Damaged($"a frame header of {header.Length} bytes", "6 bytes, and 3 for each component");
            return null;
        }

        var (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(header[1..]), BinaryPrimitives.ReadUInt16BigEndian(header[3..]));
        List<JpegComponent> components = [];
        for (var rest = header[HeaderBytes..]; !rest.IsEmpty; rest = rest[ComponentBytes..])
        {
            components.Add(new JpegComponent(rest[0], rest[1] >> 4, rest[1] & 0xF, rest[2]));
        }

        refusal = header[0] != BitsShown ? PhotoRefusals.OtherForm($"a JPEG of {header[0]} bits for each sample", "8 bits")
            : components.Count is not (1 or 3 or 4)
                ? PhotoRefusals.OtherForm($"a JPEG of {components.Count} components", "1, 3 or 4: grey, colour, or printing inks")
            : components.DistinctBy(component => component.Id).Count() < components.Count || !components.TrueForAll(component => component.IsSound)
                ? PhotoRefusals.Damaged($"components that contradict each other", "each with its own number, sampled 1 to 4 times, with table 0 to 3")
            : PhotoReader.CheckSize(width, height);
        return refusal is null ? new JpegFrame(marker == JpegMarker.ProgressiveFrame, width, height, components) : null;
    }

    /// <summary>Does the scan header name components of this frame, a part of the spectrum that can be, and tables that are there?</summary>
    public bool Allows(ReadOnlySpan<byte> scan, JpegTables tables)
    {
        if (scan.Length < 1 || scan[0] is < 1 or > 4 || scan.Length != 4 + (2 * scan[0]))
        {
            return false;
        }

        var (first, last, highBit, lowBit) = (scan[^3], scan[^2], scan[^1] >> 4, scan[^1] & 0xF);
        if (IsProgressive && (first == 0 ? last != 0 : scan[0] != 1 || last < first || last > LastCoefficient || lowBit > 13))
        {
            return false;
        }

        // A refining scan of the mean values has one bit for each block and needs no table.
        var (needsDc, needsAc) = IsProgressive ? (first == 0 && highBit == 0, first > 0) : (true, true);
        for (var rest = scan[1..^3]; !rest.IsEmpty; rest = rest[2..])
        {
            var id = rest[0];
            if (Components.FirstOrDefault(component => component.Id == id) is not { } component
                || !tables.HasQuantization(component.Quantization)
                || (needsDc && !tables.HasDc(rest[1] >> 4))
                || (needsAc && !tables.HasAc(rest[1] & 0xF)))
            {
                return false;
            }
        }

        return true;
    }
}

internal sealed record JpegComponent(byte Id, int Across, int Down, int Quantization)
{
    public bool IsSound => Across is >= 1 and <= 4 && Down is >= 1 and <= 4 && Quantization <= 3;
}
