using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.ValveTiming;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using static PartMatch.Web.Http.TypedQuantities;

namespace PartMatch.Web.ValveTiming;

public sealed record ValveTimingRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variant"), Required, Description("The engine that the camshafts go into.")] string? Variant,
    [property: FromQuery(Name = "intake-cam"), Description("Number of the intake camshaft, of this or another variant; the fitted one when left "
        + "out.")] string? IntakeCam,
    [property: FromQuery(Name = "exhaust-cam"), Description("Number of the exhaust camshaft.")] string? ExhaustCam,
    [property: FromQuery(Name = "intake-wheel"), Description("Number of the sprocket, gear or phaser on the intake camshaft.")] string? IntakeWheel,
    [property: FromQuery(Name = "exhaust-wheel"), Description("Number of the wheel on the exhaust camshaft.")] string? ExhaustWheel,
    [property: FromQuery(Name = "at-lift"), Description("Valve lift of every event given; 1 mm when left out, as books record them.")] string? AtLift,
    [property: FromQuery(Name = "intake-opens"), Description("Before top dead centre, negative = after: 8 deg, or 7..8..9 deg. As recorded when left "
        + "out.")] string? IntakeOpens,
    [property: FromQuery(Name = "intake-closes"), Description("After bottom dead centre, negative = before: -52 deg.")] string? IntakeCloses,
    [property: FromQuery(Name = "exhaust-opens"), Description("Before bottom dead centre, negative = after.")] string? ExhaustOpens,
    [property: FromQuery(Name = "exhaust-closes"), Description("After top dead centre, negative = before.")] string? ExhaustCloses,
    [property: FromQuery(Name = "intake-centre"), Description("Where the intake lobe centre is set with a degree wheel: after top dead centre, 110 "
        + "deg.")] string? IntakeCentre,
    [property: FromQuery(Name = "exhaust-centre"), Description("Where the exhaust lobe centre is set: before top dead centre.")] string? ExhaustCentre,
    [property: FromQuery(Name = "intake-advance"), Description("Degrees of the crank; negative = retarded.")] string? IntakeAdvance,
    [property: FromQuery(Name = "exhaust-advance"), Description("Degrees of the crank; negative = retarded.")] string? ExhaustAdvance,
    [property: FromQuery(Name = "intake-teeth"), Description("Teeth off the mark: 1 advanced, -1 retarded.")] string? IntakeTeeth,
    [property: FromQuery(Name = "exhaust-teeth"), Description("Teeth off the mark: 1 advanced, -1 retarded.")] string? ExhaustTeeth,
    [property: FromQuery(Name = "intake-wheel-teeth"), Description("Teeth of the wheel on the intake camshaft; as recorded when left "
        + "out.")] string? IntakeWheelTeeth,
    [property: FromQuery(Name = "exhaust-wheel-teeth"), Description("Teeth of the wheel on the exhaust camshaft.")] string? ExhaustWheelTeeth,
    [property: FromQuery(Name = "crank-turns"), Description("Turns of the crank for one of the wheel that the teeth are counted on; 2 when left "
        + "out.")] string? CrankTurns,
    [property: FromQuery(Name = "intake-phaser-range"), Description("Degrees of the crank from end to end; as recorded when left out, 0 deg for a fixed "
        + "wheel.")] string? IntakePhaserRange,
    [property: FromQuery(Name = "intake-phaser-rest"), Description("advanced, retarded or none.")] string? IntakePhaserRest,
    [property: FromQuery(Name = "exhaust-phaser-range"), Description("Degrees of the crank from end to end.")] string? ExhaustPhaserRange,
    [property: FromQuery(Name = "exhaust-phaser-rest"), Description("advanced, retarded or none.")] string? ExhaustPhaserRest,
    [property: FromQuery(Name = "compression-ratio"), Description("Geometric, as low..expected..high; as recorded when left out.")] string? CompressionRatio,
    [property: FromQuery(Name = "stroke"), Description("As recorded when left out.")] string? Stroke,
    [property: FromQuery(Name = "rod-length"), Description("Between centres; as recorded when left out.")] string? RodLength,
    [property: FromQuery(Name = "wanted-intake-opens"), Description("Which setting comes closest to this opening?")] string? WantedIntakeOpens,
    [property: FromQuery(Name = "wanted-intake-closes"), Description("Which setting comes closest to this closing?")] string? WantedIntakeCloses,
    [property: FromQuery(Name = "wanted-exhaust-opens"), Description("Which setting comes closest to this opening?")] string? WantedExhaustOpens,
    [property: FromQuery(Name = "wanted-exhaust-closes"), Description("Which setting comes closest to this closing?")] string? WantedExhaustCloses,
    [property: FromQuery(Name = "wanted-trapped"), Description("Which intake closing traps this compression ratio? 9.0")] string? WantedTrapped)
{
    private const string DefaultLift = "1 mm";

    /// <summary>The question, once the rules have passed.</summary>
    internal ValveTimingQuestion ToQuestion(NamedParts parts) => new(Variant ?? "")
    {
        AtLift = Find(AtLift ?? DefaultLift, Dimension.Length),
        CrankTurns = Find(CrankTurns, Dimension.Ratio),
        CompressionRatio = FindRange(CompressionRatio, Dimension.Ratio),
        Stroke = FindRange(Stroke, Dimension.Length),
        RodLength = FindRange(RodLength, Dimension.Length),
        WantedTrapped = Find(WantedTrapped, Dimension.Ratio),
        Intake = new LobeQuestion
        {
            Camshaft = parts["intake-cam"],
            Wheel = parts["intake-wheel"],
            Opens = Angle(IntakeOpens),
            Closes = Angle(IntakeCloses),
            Centre = Angle(IntakeCentre),
            Advance = Angle(IntakeAdvance),
            Teeth = FindSteps(IntakeTeeth) ?? 0,
            WheelTeeth = FindSteps(IntakeWheelTeeth),
            PhaserRange = Angle(IntakePhaserRange),
            PhaserRest = Codes.Find<PhaserRest>(IntakePhaserRest ?? ""),
            WantedOpens = Angle(WantedIntakeOpens),
            WantedCloses = Angle(WantedIntakeCloses),
        },
        Exhaust = new LobeQuestion
        {
            Camshaft = parts["exhaust-cam"],
            Wheel = parts["exhaust-wheel"],
            Opens = Angle(ExhaustOpens),
            Closes = Angle(ExhaustCloses),
            Centre = Angle(ExhaustCentre),
            Advance = Angle(ExhaustAdvance),
            Teeth = FindSteps(ExhaustTeeth) ?? 0,
            WheelTeeth = FindSteps(ExhaustWheelTeeth),
            PhaserRange = Angle(ExhaustPhaserRange),
            PhaserRest = Codes.Find<PhaserRest>(ExhaustPhaserRest ?? ""),
            WantedOpens = Angle(WantedExhaustOpens),
            WantedCloses = Angle(WantedExhaustCloses),
        },
    };

    internal NamedParts Parts(PartStore store) => NamedParts.Find(
        store, ("intake-cam", IntakeCam), ("exhaust-cam", ExhaustCam), ("intake-wheel", IntakeWheel), ("exhaust-wheel", ExhaustWheel));

    /// <summary>The address that asks this again, with what was left out filled in.</summary>
    internal string Permalink(string path = "/api/valve-timing") => new Permalink(path)
        .With("family", Family).With("variant", Variant).With("intake-cam", IntakeCam).With("exhaust-cam", ExhaustCam).With("intake-wheel",
            IntakeWheel).With("exhaust-wheel", ExhaustWheel)
        .With("at-lift", AtLift ?? DefaultLift).With("intake-opens", IntakeOpens).With("intake-closes", IntakeCloses).With("exhaust-opens",
            ExhaustOpens).With("exhaust-closes", ExhaustCloses)
        .With("intake-centre", IntakeCentre).With("exhaust-centre", ExhaustCentre).With("intake-advance", IntakeAdvance).With("exhaust-advance", ExhaustAdvance)
        .With("intake-teeth", IntakeTeeth).With("exhaust-teeth", ExhaustTeeth).With("intake-wheel-teeth", IntakeWheelTeeth).With("exhaust-wheel-teeth",
            ExhaustWheelTeeth)
        .With("crank-turns", CrankTurns).With("intake-phaser-range", IntakePhaserRange).With("intake-phaser-rest", IntakePhaserRest)
        .With("exhaust-phaser-range", ExhaustPhaserRange).With("exhaust-phaser-rest", ExhaustPhaserRest)
        .With("compression-ratio", CompressionRatio).With("stroke", Stroke).With("rod-length", RodLength)
        .With("wanted-intake-opens", WantedIntakeOpens).With("wanted-intake-closes", WantedIntakeCloses)
        .With("wanted-exhaust-opens", WantedExhaustOpens).With("wanted-exhaust-closes", WantedExhaustCloses).With("wanted-trapped", WantedTrapped).ToString();

    private static QuantityRange? Angle(string? text) => FindRange(text, Dimension.Angle);
}

internal sealed class ValveTimingRules : AbstractValidator<ValveTimingRequest>
{
    public ValveTimingRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
        RuleFor(request => request.IntakeCam).MustBeNumber().When(request => !string.IsNullOrEmpty(request.IntakeCam));
        RuleFor(request => request.ExhaustCam).MustBeNumber().When(request => !string.IsNullOrEmpty(request.ExhaustCam));
        RuleFor(request => request.IntakeWheel).MustBeNumber().When(request => !string.IsNullOrEmpty(request.IntakeWheel));
        RuleFor(request => request.ExhaustWheel).MustBeNumber().When(request => !string.IsNullOrEmpty(request.ExhaustWheel));
        RuleFor(request => request.AtLift).MustBeQuantity(Dimension.Length);
        RuleFor(request => request.IntakeOpens).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakeCloses).MustBeRange(Dimension.Angle);
        RuleFor(request => request.ExhaustOpens).MustBeRange(Dimension.Angle);
        RuleFor(request => request.ExhaustCloses).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakeCentre).MustBeRange(Dimension.Angle);
        RuleFor(request => request.ExhaustCentre).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakeAdvance).MustBeRange(Dimension.Angle);
        RuleFor(request => request.ExhaustAdvance).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakeTeeth).MustBeSteps();
        RuleFor(request => request.ExhaustTeeth).MustBeSteps();
        RuleFor(request => request.IntakeWheelTeeth).MustBeCount();
        RuleFor(request => request.ExhaustWheelTeeth).MustBeCount();
        RuleFor(request => request.CrankTurns).MustBeQuantity(Dimension.Ratio);
        RuleFor(request => request.IntakePhaserRange).MustBeRange(Dimension.Angle);
        RuleFor(request => request.ExhaustPhaserRange).MustBeRange(Dimension.Angle);
        RuleFor(request => request.IntakePhaserRest).Must(IsRest).Otherwise(string.Join(", ", Codes.All<PhaserRest>()),
            "retarded where oil pressure advances it");
        RuleFor(request => request.ExhaustPhaserRest).Must(IsRest).Otherwise(string.Join(", ", Codes.All<PhaserRest>()),
            "advanced where oil pressure retards it");
        RuleFor(request => request.CompressionRatio).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.Stroke).MustBeRange(Dimension.Length);
        RuleFor(request => request.RodLength).MustBeRange(Dimension.Length);
        RuleFor(request => request.WantedIntakeOpens).MustBeRange(Dimension.Angle);
        RuleFor(request => request.WantedIntakeCloses).MustBeRange(Dimension.Angle);
        RuleFor(request => request.WantedExhaustOpens).MustBeRange(Dimension.Angle);
        RuleFor(request => request.WantedExhaustCloses).MustBeRange(Dimension.Angle);
        RuleFor(request => request.WantedTrapped).MustBeQuantity(Dimension.Ratio);
    }

    private static bool IsRest(string? text) => text is null || Codes.Find<PhaserRest>(text) is not null;
}
