namespace PartMatch.Core.Measures;

/// <summary>A closed interval on the number line; a missing end is open to infinity. Decimal, so that 0.1 + 0.2 is 0.3.</summary>
/// <param name="Low">Lower end, or null for no lower end.</param>
/// <param name="High">Upper end, or null for no upper end.</param>
public readonly record struct Interval(decimal? Low, decimal? High)
{
    public static Interval Everything => new(null, null);

    public bool IsEmpty => Low > High;

    /// <summary>Is all of this interval inside the other? An empty interval holds nothing.</summary>
    public bool LiesIn(Interval other) =>
        !other.IsEmpty
        && (other.Low is null || (Low is { } low && low >= other.Low))
        && (other.High is null || (High is { } high && high <= other.High));

    /// <summary>Do the two share at least one point? Ends that touch do.</summary>
    public bool Meets(Interval other) =>
        !IsEmpty && !other.IsEmpty
        && !(Low is { } low && other.High is { } otherHigh && low > otherHigh)
        && !(High is { } high && other.Low is { } otherLow && high < otherLow);

    /// <summary>From end to end; null where an end is open.</summary>
    public decimal? Width => High - Low;

    public Interval Hull(Interval other) =>
        new(Low is null || other.Low is null ? null : Math.Min(Low.Value, other.Low.Value),
            High is null || other.High is null ? null : Math.Max(High.Value, other.High.Value));

    public Interval Widened(decimal by) => new(Low - by, High + by);

    public static Interval operator +(Interval left, Interval right) => new(left.Low + right.Low, left.High + right.High);

    public static Interval operator -(Interval left, Interval right) => new(left.Low - right.High, left.High - right.Low);

    public static Interval operator -(Interval value) => new(-value.High, -value.Low);

    public static Interval Add(Interval left, Interval right) => left + right;

    public static Interval Subtract(Interval left, Interval right) => left - right;

    public static Interval Negate(Interval value) => -value;
}
