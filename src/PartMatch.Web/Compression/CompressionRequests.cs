using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using static PartMatch.Web.Http.TypedQuantities;

namespace PartMatch.Web.Compression;

public sealed record CompressionRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variant"), Required, Description("The engine that the parts go into.")] string? Variant,
    [property: FromQuery(Name = "head"), Description("Number of the head; the fitted one when left out.")] string? Head,
    [property: FromQuery(Name = "head-gasket"), Description("Number of the head gasket; the fitted one when left out.")] string? HeadGasket,
    [property: FromQuery(Name = "piston"), Description("Number of the piston; the fitted one when left out.")] string? Piston,
    [property: FromQuery(Name = "intake-cam"), Description("Number of the intake camshaft, whose closing decides what is trapped; the fitted one when left "
        + "out.")] string? IntakeCam,
    [property: FromQuery(Name = "intake-closes"), Description("Degrees of the crank after bottom dead centre at 1 mm lift, negative = before; as recorded "
        + "when left out.")] string? IntakeCloses,
    [property: FromQuery(Name = "intake-advance"), Description("Of the intake camshaft, degrees of the crank; negative = retarded.")] string? IntakeAdvance,
    [property: FromQuery(Name = "bore"), Description("After boring, 85.5 mm, or 85.49..85.50..85.51 mm; as recorded when left out.")] string? Bore,
    [property: FromQuery(Name = "stroke"), Description("As recorded when left out.")] string? Stroke,
    [property: FromQuery(Name = "rod-length"), Description("Between centres; as recorded when left out.")] string? RodLength,
    [property: FromQuery(Name = "deck-height"), Description("Crankshaft centre to the block's face; as recorded when left out.")] string? DeckHeight,
    [property: FromQuery(Name = "compression-height"), Description("Pin centre to crown edge; as recorded of the piston when left "
        + "out.")] string? CompressionHeight,
    [property: FromQuery(Name = "deck-clearance"), Description("Crown edge below the block's face at top dead centre, measured; negative = above. Stands in "
        + "place of the four lengths.")] string? DeckClearance,
    [property: FromQuery(Name = "chamber-volume"), Description("In the head, valves and plug fitted; as recorded of the head when left "
        + "out.")] string? ChamberVolume,
    [property: FromQuery(Name = "bowl-volume"), Description("In the piston: dish positive, dome negative; as recorded of the piston when left "
        + "out.")] string? BowlVolume,
    [property: FromQuery(Name = "gasket-thickness"), Description("Tightened; as recorded of the gasket when left out.")] string? GasketThickness,
    [property: FromQuery(Name = "gasket-bore"), Description("Hole over the cylinder; as recorded of the gasket when left out.")] string? GasketBore,
    [property: FromQuery(Name = "head-skim"), Description("Taken off the face of the head.")] string? HeadSkim,
    [property: FromQuery(Name = "block-skim"), Description("Taken off the face of the block.")] string? BlockSkim,
    [property: FromQuery(Name = "chamber-area"), Description("Opening of the chamber at the face of the head; half to all of the bore when left "
        + "out.")] string? ChamberArea,
    [property: FromQuery(Name = "land-depth"), Description("How deep the squish land lies below the face of the head; level with it when left "
        + "out.")] string? LandDepth,
    [property: FromQuery(Name = "wanted-ratio"), Description("Which gasket, skim or bowl makes this geometric ratio? 10.0")] string? WantedRatio)
{
    /// <summary>The question, once the rules have passed.</summary>
    internal CompressionQuestion ToQuestion(NamedParts parts) => new(Variant ?? "")
    {
        Head = parts["head"],
        HeadGasket = parts["head-gasket"],
        Piston = parts["piston"],
        IntakeCamshaft = parts["intake-cam"],
        IntakeCloses = FindRange(IntakeCloses, Dimension.Angle),
        IntakeAdvance = FindRange(IntakeAdvance, Dimension.Angle),
        Bore = Length(Bore),
        Stroke = Length(Stroke),
        RodLength = Length(RodLength),
        DeckHeight = Length(DeckHeight),
        CompressionHeight = Length(CompressionHeight),
        DeckClearance = Length(DeckClearance),
        ChamberVolume = FindRange(ChamberVolume, Dimension.Volume),
        BowlVolume = FindRange(BowlVolume, Dimension.Volume),
        GasketThickness = Length(GasketThickness),
        GasketBore = Length(GasketBore),
        HeadSkim = Length(HeadSkim),
        BlockSkim = Length(BlockSkim),
        ChamberArea = FindRange(ChamberArea, Dimension.Area),
        LandDepth = Length(LandDepth),
        WantedRatio = Find(WantedRatio, Dimension.Ratio),
    };

    internal NamedParts Parts(PartStore store) =>
        NamedParts.Find(store, ("head", Head), ("head-gasket", HeadGasket), ("piston", Piston), ("intake-cam", IntakeCam));

    /// <summary>The address that asks this again.</summary>
    internal string Permalink(string path = "/api/compression") => new Permalink(path)
        .With("family", Family).With("variant", Variant).With("head", Head).With("head-gasket", HeadGasket).With("piston", Piston).With("intake-cam", IntakeCam)
        .With("intake-closes", IntakeCloses).With("intake-advance", IntakeAdvance).With("bore", Bore).With("stroke", Stroke).With("rod-length", RodLength)
        .With("deck-height", DeckHeight).With("compression-height", CompressionHeight).With("deck-clearance", DeckClearance)
        .With("chamber-volume", ChamberVolume).With("bowl-volume", BowlVolume).With("gasket-thickness", GasketThickness).With("gasket-bore", GasketBore)
        .With("head-skim", HeadSkim).With("block-skim", BlockSkim).With("chamber-area", ChamberArea).With("land-depth", LandDepth)
        .With("wanted-ratio", WantedRatio).ToString();

    private static QuantityRange? Length(string? text) => FindRange(text, Dimension.Length);
}

internal sealed class CompressionRules : AbstractValidator<CompressionRequest>
{
    public CompressionRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
        RuleFor(request => request.Head).MustBeNumber().When(request => !string.IsNullOrEmpty(request.Head));
        RuleFor(request => request.HeadGasket).MustBeNumber().When(request => !string.IsNullOrEmpty(request.HeadGasket));
        RuleFor(request => request.Piston).MustBeNumber().When(request => !string.IsNullOrEmpty(request.Piston));
        RuleFor(request => request.IntakeCam).MustBeNumber().When(request => !string.IsNullOrEmpty(request.IntakeCam));
        RuleFor(request => request.IntakeCloses).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakeAdvance).MustBeRange(Dimension.Angle);
        RuleFor(request => request.Bore).MustBeRange(Dimension.Length);
        RuleFor(request => request.Stroke).MustBeRange(Dimension.Length);
        RuleFor(request => request.RodLength).MustBeRange(Dimension.Length);
        RuleFor(request => request.DeckHeight).MustBeRange(Dimension.Length);
        RuleFor(request => request.CompressionHeight).MustBeRange(Dimension.Length);
        RuleFor(request => request.DeckClearance).MustBeRange(Dimension.Length);
        RuleFor(request => request.ChamberVolume).MustBeRange(Dimension.Volume);
        RuleFor(request => request.BowlVolume).MustBeRange(Dimension.Volume);
        RuleFor(request => request.GasketThickness).MustBeRange(Dimension.Length);
        RuleFor(request => request.GasketBore).MustBeRange(Dimension.Length);
        RuleFor(request => request.HeadSkim).MustBeRange(Dimension.Length);
        RuleFor(request => request.BlockSkim).MustBeRange(Dimension.Length);
        RuleFor(request => request.ChamberArea).MustBeRange(Dimension.Area);
        RuleFor(request => request.LandDepth).MustBeRange(Dimension.Length);
        RuleFor(request => request.WantedRatio).MustBeQuantity(Dimension.Ratio);
    }
}
