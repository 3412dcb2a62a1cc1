using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Web.Http;

namespace PartMatch.Web.Injectors;

/// <summary>A goal as injectors and fuel supply are asked for it. Every quantity may be a range: low..expected..high with one unit.</summary>
public abstract record GoalRequest
{
    private const string NoBoost = "0 bar";
    private const string DefaultDuty = "85 %";

    [FromQuery(Name = "family"), Required, Description("Code of the family.")]
    public string? Family { get; init; }

    [FromQuery(Name = "variant"), Required, Description("The engine that the goal is for.")]
    public string? Variant { get; init; }

    [FromQuery(Name = "power"), Required, Description("At the crank, with its unit: 180 kW, 240 hp(I), 170..180..190 kW.")]
    public string? Power { get; init; }

    [FromQuery(Name = "speed"), Required, Description("At which that power is made: 6800/min.")]
    public string? Speed { get; init; }

    [FromQuery(Name = "boost"), Description("Manifold pressure over ambient there: 1.1 bar; 0 bar when left out.")]
    public string? Boost { get; init; }

    [FromQuery(Name = "pressure"), Description("Fuel pressure: what the regulator holds, as supply says. 3.0 bar; as recorded of the variant when left out.")]
    public string? Pressure { get; init; }

    [FromQuery(Name = "supply"), Description("return-manifold, return-ambient, returnless-fixed or returnless-controlled; as recorded of the variant when left out.")]
    public string? Supply { get; init; }

    [FromQuery(Name = "rail-table"),
        Description("Rail pressure that a control unit sets, as boost:rail pairs with rising boost, both gauge: 0:3.5,0.5:4.0,1.1:5.0 bar.")]
    public string? RailTable { get; init; }

    [FromQuery(Name = "duty"), Description("Largest share of the time an injector may be open; 85 % when left out.")]
    public string? Duty { get; init; }

    [FromQuery(Name = "fuel"), Description("petrol-e0, petrol-e5, petrol-e10, e85, ethanol or methanol; petrol-e0 when left out.")]
    public string? Fuel { get; init; }

    [FromQuery(Name = "ethanol"), Description("Share of ethanol by volume in petrol or E85, where it was measured: 70 %; the range of the fuel's standard when left out.")]
    public string? Ethanol { get; init; }

    [FromQuery(Name = "fuel-temperature"), Description("Of the fuel: 40 degC; densities as published at 15 °C when left out.")]
    public string? FuelTemperature { get; init; }

    [FromQuery(Name = "bsfc"), Description("Specific consumption, as low..expected..high: 300..330..380 g/(kW·h); a published range when left out.")]
    public string? Bsfc { get; init; }

    [FromQuery(Name = "dead-time"), Description("For every injector, as low..expected..high: 0.8..0.9..1.1 ms; each one's own table when left out.")]
    public string? DeadTime { get; init; }

    [FromQuery(Name = "voltage"), Description("At the injectors; 14 V when left out.")]
    public string? Voltage { get; init; }

    [FromQuery(Name = "shots"), Description("Shots (openings) of one injector in a cycle; as the variant has it when left out.")]
    public string? Shots { get; init; }

    [FromQuery(Name = "cylinders"), Description("As the variant has it when left out.")]
    public string? Cylinders { get; init; }

    [FromQuery(Name = "injectors-per-cylinder"), Description("As the variant has it when left out.")]
    public string? InjectorsPerCylinder { get; init; }

    [FromQuery(Name = "staged-with"), Description("Number of a second injector in each cylinder that opens beside the one judged, above idle.")]
    public string? StagedWith { get; init; }

    /// <summary>The goal, once the rules have passed.</summary>
    /// <param name="second">The part that staged-with= names.</param>
    internal InjectorQuestion ToGoal(Part? second) => new(
        Family ?? "", Variant ?? "", Read(Power, Dimension.Power), Read(Speed, Dimension.Speed), Read(Boost ?? NoBoost, Dimension.Pressure),
        Find(Pressure, Dimension.Pressure), Codes.Find<FuelSupply>(Supply ?? ""), Read(Duty ?? DefaultDuty, Dimension.Ratio), Fuel ?? Fuels.Petrol.Code)
    {
        IsBoostLeftOut = Boost is null,
        Bsfc = FindRange(Bsfc, Dimension.SpecificConsumption),
        DeadTime = FindRange(DeadTime, Dimension.Time),
        Voltage = Find(Voltage, Dimension.Voltage),
        Shots = FindCount(Shots),
        Cylinders = FindCount(Cylinders),
        InjectorsPerCylinder = FindCount(InjectorsPerCylinder),
        Ethanol = FindRange(Ethanol, Dimension.Ratio),
        FuelTemperature = FindRange(FuelTemperature, Dimension.Temperature),
        RailTable = RailTable is not null && RailTableParser.Parse(RailTable) is RailTableRead read ? read.Points : [],
        StagedWith = second,
    };

    /// <summary>The address that asks this again, with what was left out filled in.</summary>
    internal Permalink LinkTo(string path) => new Permalink(path)
        .With("family", Family).With("variant", Variant).With("power", Power).With("speed", Speed).With("boost", Boost)
        .With("pressure", Pressure).With("supply", Supply).With("rail-table", RailTable).With("duty", Duty ?? DefaultDuty).With("fuel",
            Fuel ?? Fuels.Petrol.Code)
        .With("ethanol", Ethanol).With("fuel-temperature", FuelTemperature)
        .With("bsfc", Bsfc).With("dead-time", DeadTime).With("voltage", Voltage).With("shots", Shots)
        .With("cylinders", Cylinders).With("injectors-per-cylinder", InjectorsPerCylinder).With("staged-with", StagedWith);

    private protected static Quantity? Find(string? text, Dimension dimension) =>
        text is not null && QuantityRangeParser.Parse(text, dimension) is RangeRead read ? read.Quantity : null;

    private protected static QuantityRange? FindRange(string? text, Dimension dimension) =>
        text is not null && QuantityRangeParser.Parse(text, dimension) is RangeRead read ? read.Range : null;

    private static Quantity Read(string? text, Dimension dimension) =>
        Find(text, dimension) ?? throw new InvalidOperationException($"'{text}' has passed the rules as a {dimension} and is none.");

    private static int? FindCount(string? text) => (int?)CommonRules.FindWhole(text);
}

internal abstract class GoalRules<T> : AbstractValidator<T>
    where T : GoalRequest
{
    protected GoalRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
        RuleFor(request => request.Power).MustBeGiven("a power", "for example power=180 kW").MustBeRange(Dimension.Power);
        RuleFor(request => request.Speed).MustBeGiven("a speed", "for example speed=6800/min").MustBeRange(Dimension.Speed);
        RuleFor(request => request.Boost).MustBeRange(Dimension.Pressure);
        RuleFor(request => request.Pressure).MustBeRange(Dimension.Pressure);
        RuleFor(request => request.Supply).Must(supply => supply is null || Codes.Find<FuelSupply>(supply) is not null)
            .Otherwise(string.Join(", ", Codes.All<FuelSupply>()), "return-manifold where a hose leads from the regulator to the manifold");
        RuleFor(request => request.RailTable).MustBeRailTable();
        RuleFor(request => request.Duty).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.Ethanol).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.FuelTemperature).MustBeRange(Dimension.Temperature);
        RuleFor(request => request.Bsfc).MustBeRange(Dimension.SpecificConsumption);
        RuleFor(request => request.DeadTime).MustBeRange(Dimension.Time);
        RuleFor(request => request.Voltage).MustBeRange(Dimension.Voltage);
        RuleFor(request => request.Shots).MustBeCount();
        RuleFor(request => request.Cylinders).MustBeCount();
        RuleFor(request => request.InjectorsPerCylinder).MustBeCount();
        RuleFor(request => request.StagedWith).MustBeNumber().When(request => request.StagedWith is not null);
    }
}
