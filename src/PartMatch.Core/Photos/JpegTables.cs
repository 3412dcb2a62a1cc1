namespace PartMatch.Core.Photos;

/// <summary>Which tables have been defined so far, and whether the segments that define them hold nothing else.</summary>
/// <remarks>Source: ITU-T T.81, B.2.4.1 and B.2.4.2.</remarks>
internal sealed class JpegTables
{
    private const int Places = 4;
    private const int Coefficients = 64;
    private const int CodeLengths = 16;
    private const int MostCodes = 256;

    private readonly bool[] _quantization = new bool[Places];
    private readonly bool[] _dc = new bool[Places];
    private readonly bool[] _ac = new bool[Places];

    public bool HasQuantization(int place) => place < Places && _quantization[place];

    public bool HasDc(int place) => place < Places && _dc[place];

    public bool HasAc(int place) => place < Places && _ac[place];

    /// <summary>False when the segment is not exactly a row of quantization tables.</summary>
    public bool TakeQuantization(ReadOnlySpan<byte> tables)
    {
        while (!tables.IsEmpty)
        {
            var (precision, place) = (tables[0] >> 4, tables[0] & 0xF);
            var length = 1 + (Coefficients * (precision + 1));
            if (precision > 1 || place >= Places || tables.Length < length)
            {
                return false;
            }

            _quantization[place] = true;
            tables = tables[length..];
        }

        return true;
    }

    /// <summary>False when the segment is not exactly a row of Huffman tables.</summary>
    public bool TakeHuffman(ReadOnlySpan<byte> tables)
    {
        while (!tables.IsEmpty)
        {
            var (use, place) = (tables[0] >> 4, tables[0] & 0xF);
            if (use > 1 || place >= Places || tables.Length < 1 + CodeLengths)
            {
                return false;
            }

            var codes = 0;
            foreach (var ofThisLength in tables.Slice(1, CodeLengths))
            {
                codes += ofThisLength;
            }

            var length = 1 + CodeLengths + codes;
            if (codes > MostCodes || tables.Length < length)
            {
                return false;
            }

            (use == 0 ? _dc : _ac)[place] = true;
            tables = tables[length..];
        }

        return true;
    }
}
