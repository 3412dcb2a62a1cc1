namespace PartMatch.Core.Plots;

/// <summary>Where a drawing of an answer stands.</summary>
/// <param name="Name">Of the drawing: <c>pump</c>, <c>valve-events</c>.</param>
/// <param name="Link">Address of the SVG; the same with <c>.json</c> gives its numbers.</param>
public sealed record PlotLink(string Name, string Title, string Link);
