using PartMatch.Core.Listings;
using SharpFuzz;

// The first byte says what the rest is read as; an exception that leaves the reader is a crash.
// With a file as argument that one is read and the outcome told, to look at what was found.
static ListingReading ReadOne(ReadOnlySpan<byte> bytes) =>
    bytes.IsEmpty ? ListingReader.Read(new(ListingFormat.Text, ReadOnlyMemory<byte>.Empty), ListingBounds.Usual)
        : ListingReader.Read(new((ListingFormat)(bytes[0] % 3), bytes[1..].ToArray()), ListingBounds.Usual);

if (args is [var file])
{
    Console.WriteLine(ReadOne(File.ReadAllBytes(file)).GetType().Name);
}
else
{
    Fuzzer.Run(stream =>
    {
        using var all = new MemoryStream();
        stream.CopyTo(all);
        _ = ReadOne(all.ToArray());
    });
}
