using System.Reflection;
using System.Text;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Core.Plots;

namespace PartMatch.Web.Plots;

/// <summary>A drawing: as SVG where the address ends in <c>.svg</c>, as the numbers behind it where it ends in <c>.json</c>.</summary>
public sealed class PlotAnswer(Plot plot, string form) : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    public const string Svg = "svg";

    /// <summary>Ends the template of a plot's route: <c>"/plots/pump." + PlotAnswer.Form</c>.</summary>
    public const string Form = "{form:regex(^(svg|json)$)}";

    private const string StyleSheet = "/css/plot-alone.css";

    public int? StatusCode => StatusCodes.Status200OK;

    public Task ExecuteAsync(HttpContext httpContext) => form == Svg
        ? Results.Text(PlotSvg.Write(plot, StyleSheet), "image/svg+xml", Encoding.UTF8).ExecuteAsync(httpContext)
        : Results.Json(new PlotNumbers(plot.Title, plot.Description, plot.Table)).ExecuteAsync(httpContext);

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(PlotNumbers), ["application/json", "image/svg+xml"]));
}

/// <summary>The numbers behind a drawing, as a table shows them.</summary>
public sealed record PlotNumbers(string Title, string Description, PlotTable Table);
