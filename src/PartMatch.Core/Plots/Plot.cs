namespace PartMatch.Core.Plots;

/// <summary>A drawing of an answer, with the table behind it. Numbers are in the unit their axis names, not in base units.</summary>
/// <param name="Title">What is drawn, a short noun phrase.</param>
/// <param name="Description">One or two sentences that say what there is to see, for those who do not see it.</param>
/// <param name="Table">The numbers of the drawing as text, with a unit in each heading.</param>
public abstract record Plot(string Title, string Description, PlotAxis X, PlotTable Table);

/// <summary>Lines, bands and points over two axes.</summary>
/// <param name="Lines">At most six: more cannot be told apart without colour.</param>
public sealed record CurvePlot(
    string Title, string Description, PlotAxis X, PlotAxis Y, IReadOnlyList<PlotLine> Lines, IReadOnlyList<PlotBand> Bands, IReadOnlyList<PlotLimit> Limits, PlotTable Table)
    : Plot(Title, Description, X, Table);

/// <summary>Bars in named rows over one axis, such as the time a valve is open over the crank angle.</summary>
public sealed record RowPlot(string Title, string Description, PlotAxis X, IReadOnlyList<PlotRow> Rows, IReadOnlyList<PlotLimit> Limits, PlotTable Table)
    : Plot(Title, Description, X, Table);

/// <summary>An axis.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Unit">As written behind the name; empty where there is none.</param>
/// <param name="From">Where it begins; null = a round number at or below what is drawn.</param>
/// <param name="To">Where it ends; null = a round number at or above what is drawn.</param>
public sealed record PlotAxis(string Name, string Unit, double? From = null, double? To = null)
{
    /// <summary>Distance between ticks; null = a round number that gives about six of them.</summary>
    public double? Step { get; init; }
}

public sealed record PlotPoint(double X, double Y)
{
    /// <summary>Written beside a point that is drawn alone.</summary>
    public string? Name { get; init; }
}

/// <summary>A line through points in the order given, or the points alone.</summary>
/// <param name="Name">As the legend says it.</param>
public sealed record PlotLine(string Name, IReadOnlyList<PlotPoint> Points)
{
    /// <summary>Drawn stronger: what the question is about.</summary>
    public bool IsMain { get; init; }

    /// <summary>Recorded points, not a line between them.</summary>
    public bool IsPointsOnly { get; init; }

    /// <summary>Points that are drawn besides, on the line or off it, in the shape of <see cref="Shape"/>.</summary>
    public IReadOnlyList<PlotPoint> Marks { get; init; } = [];

    public PlotShape Shape { get; init; }
}

/// <summary>Shapes of points, so that those of one line are told from those of another without colour.</summary>
public enum PlotShape
{
    Circle,
    Square,
    Diamond,
    Triangle,
    Cross,
}

/// <summary>Between a lower and an upper line over the same x.</summary>
public sealed record PlotBand(string Name, IReadOnlyList<PlotPoint> Low, IReadOnlyList<PlotPoint> High);

/// <summary>A line across the drawing at one value of one axis.</summary>
public sealed record PlotLimit(PlotDirection Direction, double At, string Name);

/// <summary>Which way a limit runs.</summary>
public enum PlotDirection
{
    /// <summary>At one value of x, from the foot to the top.</summary>
    Upright,

    /// <summary>At one value of y, from side to side.</summary>
    Level,
}

/// <summary>A named row of bars.</summary>
public sealed record PlotRow(string Name, IReadOnlyList<PlotBar> Bars);

/// <param name="Text">Beside the bar; empty where the bar before says it.</param>
public sealed record PlotBar(double From, double To, string Text)
{
    /// <summary>Hatched instead of filled: what is compared with, or a part of a range.</summary>
    public bool IsFaint { get; init; }
}

/// <summary>The numbers behind a drawing.</summary>
public sealed record PlotTable(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);
