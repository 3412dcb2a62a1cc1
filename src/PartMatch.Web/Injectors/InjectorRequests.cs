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

public sealed record InjectorRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variant"), Required, Description("The engine that the goal is for.")] string? Variant,
    [property: FromQuery(Name = "power"), Required, Description("At the crank, with its unit: 180 kW, 240 hp(I), 245 PS.")] string? Power,
    [property: FromQuery(Name = "speed"), Required, Description("At which that power is made: 6800/min.")] string? Speed,
    [property: FromQuery(Name = "boost"), Description("Manifold pressure over ambient there: 1.1 bar; 0 bar when left out.")] string? Boost,
    [property: FromQuery(Name = "pressure"), Required, Description("Fuel pressure: what the regulator holds, as supply says. 3.0 bar.")] string? Pressure,
    [property: FromQuery(Name = "supply"), Required, Description("return-manifold, return-ambient, returnless-fixed or returnless-controlled.")] string? Supply,
    [property: FromQuery(Name = "duty"), Description("Largest share of the time an injector may be open; 85 % when left out.")] string? Duty,
    [property: FromQuery(Name = "fuel"), Description("petrol-e0, petrol-e5, petrol-e10, e85, ethanol or methanol; petrol-e0 when left out.")] string? Fuel,
    [property: FromQuery(Name = "bsfc"), Description("Specific consumption, as low..expected..high: 300..330..380 g/(kW·h); a published range when left out.")] string? Bsfc,
    [property: FromQuery(Name = "dead-time"), Description("For every injector, as low..expected..high: 0.8..0.9..1.1 ms; each one's own table when left out.")] string? DeadTime,
    [property: FromQuery(Name = "voltage"), Description("At the injectors; 14 V when left out.")] string? Voltage,
    [property: FromQuery(Name = "shots"), Description("Squirts of one injector in a cycle; as the variant has it when left out.")] string? Shots,
    [property: FromQuery(Name = "cylinders"), Description("As the variant has it when left out.")] string? Cylinders,
    [property: FromQuery(Name = "injectors-per-cylinder"), Description("As the variant has it when left out.")] string? InjectorsPerCylinder)
{
    private const string DefaultBoost = "0 bar";
    private const string DefaultDuty = "85 %";

    /// <summary>The question, once the rules have passed.</summary>
    internal InjectorQuestion ToQuestion() => new(
        Family ?? "", Variant ?? "", Read(Power, Dimension.Power), Read(Speed, Dimension.Speed), Read(Boost ?? DefaultBoost, Dimension.Pressure),
        Read(Pressure, Dimension.Pressure), Codes.Find<FuelSupply>(Supply ?? "") ?? FuelSupply.ReturnManifold, Read(Duty ?? DefaultDuty, Dimension.Ratio), Fuel ?? Fuels.Petrol.Code)
    {
        Bsfc = FindRange(Bsfc, Dimension.SpecificConsumption),
        DeadTime = FindRange(DeadTime, Dimension.Time),
        Voltage = Voltage is null ? null : Read(Voltage, Dimension.Voltage),
        Shots = FindCount(Shots),
        Cylinders = FindCount(Cylinders),
        InjectorsPerCylinder = FindCount(InjectorsPerCylinder),
    };

    /// <summary>The address that asks this again, with what was left out filled in.</summary>
    internal string Permalink() => new Permalink("/api/injectors")
        .With("family", Family).With("variant", Variant).With("power", Power).With("speed", Speed).With("boost", Boost ?? DefaultBoost)
        .With("pressure", Pressure).With("supply", Supply).With("duty", Duty ?? DefaultDuty).With("fuel", Fuel ?? Fuels.Petrol.Code)
        .With("bsfc", Bsfc).With("dead-time", DeadTime).With("voltage", Voltage).With("shots", Shots)
        .With("cylinders", Cylinders).With("injectors-per-cylinder", InjectorsPerCylinder).ToString();

    private static Quantity Read(string? text, Dimension dimension) =>
        QuantityParser.Parse(text ?? "", dimension) is QuantityRead read
            ? read.Quantity
            : throw new InvalidOperationException($"'{text}' has passed the rules as a {dimension} and is none.");

    private static QuantityRange? FindRange(string? text, Dimension dimension) =>
        text is not null && QuantityRangeParser.Parse(text, dimension) is RangeRead read ? read.Range : null;

    private static int? FindCount(string? text) => (int?)CommonRules.FindWhole(text);
}

internal sealed class InjectorRules : AbstractValidator<InjectorRequest>
{
    public InjectorRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
        RuleFor(request => request.Power).MustBeGiven("a power", "for example power=180 kW").MustBeQuantity(Dimension.Power);
        RuleFor(request => request.Speed).MustBeGiven("a speed", "for example speed=6800/min").MustBeQuantity(Dimension.Speed);
        RuleFor(request => request.Boost).MustBeQuantity(Dimension.Pressure);
        RuleFor(request => request.Pressure).MustBeGiven("a fuel pressure", "for example pressure=3.0 bar").MustBeQuantity(Dimension.Pressure);
        RuleFor(request => request.Supply).Must(supply => Codes.Find<FuelSupply>(supply ?? "") is not null)
            .Otherwise(string.Join(", ", Codes.All<FuelSupply>()), "return-manifold where a hose leads from the regulator to the manifold");
        RuleFor(request => request.Duty).MustBeQuantity(Dimension.Ratio);
        RuleFor(request => request.Bsfc).MustBeRange(Dimension.SpecificConsumption);
        RuleFor(request => request.DeadTime).MustBeRange(Dimension.Time);
        RuleFor(request => request.Voltage).MustBeQuantity(Dimension.Voltage);
        RuleFor(request => request.Shots).MustBeCount();
        RuleFor(request => request.Cylinders).MustBeCount();
        RuleFor(request => request.InjectorsPerCylinder).MustBeCount();
    }
}
