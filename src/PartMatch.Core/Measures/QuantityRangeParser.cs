namespace PartMatch.Core.Measures;

/// <summary>The outcome of reading a range: <see cref="RangeRead"/> or <see cref="RangeRefused"/>.</summary>
public abstract record RangeOutcome;

/// <summary>The text was understood.</summary>
/// <param name="Unit">The unit it was written in.</param>
/// <param name="Said">What was filled in by the reader of the text, in words; null when nothing was.</param>
public sealed record RangeRead(QuantityRange Range, Unit Unit, string? Said) : RangeOutcome
{
    /// <summary>The same as a quantity: its value is the expected one, its ends are there only where a range was typed.</summary>
    public required Quantity Quantity { get; init; }
}

/// <summary>The text was not understood, with the reason.</summary>
public sealed record RangeRefused(QuantityRefused Reason) : RangeOutcome;

/// <summary>
/// Reads "300..330..380 g/(kW·h)" as low, expected, high; "300..380 g/(kW·h)" with the middle as expected; "330 g/(kW·h)" as a value without
/// spread. The unit is written once, at the end. Numbers are as strict as those of <see cref="QuantityParser"/>.
/// </summary>
public static class QuantityRangeParser
{
    private const string Separator = "..";

    public static RangeOutcome Parse(string text, Dimension dimension)
    {
        // The sign by which answers print a range reads as the two dots it stands for.
        var parts = text.Length <= QuantityParser.MaxLength ? text.Replace("…", Separator, StringComparison.Ordinal).Split(Separator) : [text];
        if (parts.Length > 3)
        {
            return Refuse("quantity-unreadable", "Not a range", text, dimension);
        }

        var last = QuantityParser.Parse(parts[^1], dimension);
        if (last is not QuantityRead read)
        {
            var refused = (QuantityRefused)last;
            return new RangeRefused(parts.Length > 1 ? refused with { Found = text } : refused);
        }

        var numbers = new List<decimal>();
        foreach (var part in parts[..^1])
        {
            if (QuantityParser.FindNumber(part.Trim()) is not { } number)
            {
                return Refuse("quantity-unreadable", "Not a range", text, dimension);
            }

            numbers.Add(read.Unit.ToBase(number));
        }

        numbers.Add(read.Quantity.Value);
        return numbers.Zip(numbers.Skip(1)).All(pair => pair.First <= pair.Second)
            ? Read(numbers, parts, read)
            : Refuse("quantity-unreadable", "The range runs backwards", text, dimension);
    }

    private static RangeRead Read(List<decimal> numbers, string[] parts, QuantityRead last)
    {
        var (low, high) = (numbers[0], numbers[^1]);
        var expected = numbers.Count == 3 ? numbers[1] : (low + high) / 2;
        var written = string.Join(" … ", parts[..^1].Select(part => part.Trim()).Append(last.Quantity.Text));
        var said = numbers.Count == 2 ? $"expected = the middle of {written}" : null;
        var quantity = parts.Length == 1
            ? last.Quantity
            : new Quantity(expected, last.Quantity.Unit, written) { Low = low, High = high };
        return new RangeRead(new QuantityRange((double)low, (double)expected, (double)high, last.Quantity.Unit, written), last.Unit, said) { Quantity = quantity };
    }

    private static RangeRefused Refuse(string code, string title, string text, Dimension dimension)
    {
        var symbol = UnitTable.All.Last(unit => unit.Dimension == dimension).Symbol;
        var found = text.Length <= QuantityParser.MaxLength ? text : text[..QuantityParser.MaxLength] + "…";
        return new RangeRefused(new QuantityRefused(
            code, title, found, $"low..expected..high, low..high or one value, smallest first, with one unit of: {UnitTable.SymbolsOf(dimension)}", $"for example 300..330..380 {symbol}"));
    }
}
