using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>The outcome of reading a table of rail pressures.</summary>
public abstract record RailTableOutcome;

/// <param name="Points">Rising boost.</param>
public sealed record RailTableRead(IReadOnlyList<RailPoint> Points) : RailTableOutcome;

public sealed record RailTableRefused(QuantityRefused Reason) : RailTableOutcome;

/// <summary>Reads "0:3.5,0.5:4.0,1.1:5.0 bar": boost:rail pairs with rising boost, both gauge, the unit once at the end.</summary>
public static class RailTableParser
{
    private const int MostPoints = 32;
    private const int MostLetters = 600;

    public static RailTableOutcome Parse(string text)
    {
        var pairs = text.Length <= MostLetters ? text.Split(',') : [];
        if (pairs.Length is < 2 or > MostPoints || pairs[^1].Split(':') is not [_, var end]
            || QuantityParser.Parse(end.Trim(), Dimension.Pressure) is not QuantityRead last)
        {
            return Refuse("Not a table of rail pressures", text);
        }

        var points = new List<RailPoint>();
        foreach (var pair in pairs)
        {
            var sides = pair.Split(':');
            var rail = sides.Length == 2 && points.Count == pairs.Length - 1 ? last.Quantity.Value : FindBar(sides.ElementAtOrDefault(1), last.Unit);
            if (sides.Length != 2 || FindBar(sides[0], last.Unit) is not { } boost || rail is not { } pascals)
            {
                return Refuse("Not a table of rail pressures", text);
            }

            if (points.Count > 0 && boost <= points[^1].BoostPa)
            {
                return Refuse("The table does not rise", text);
            }

            points.Add(new RailPoint(boost, pascals));
        }

        return new RailTableRead(points);
    }

    private static decimal? FindBar(string? text, Unit unit) => QuantityParser.FindNumber(text?.Trim() ?? "") is { } number ? unit.ToBase(number) : null;

    private static RailTableRefused Refuse(string title, string text) => new(new QuantityRefused(
        "quantity-unreadable", title, text.Length <= QuantityParser.MaxLength ? text : text[..QuantityParser.MaxLength] + "…",
        $"boost:rail pairs with rising boost, 2 to {MostPoints} of them, both gauge, with one unit at the end", "for example 0:3.5,0.5:4.0,1.1:5.0 bar"));
}
