using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Supply;
using PartMatch.Web.Http;
using PartMatch.Web.Injectors;

namespace PartMatch.Web.Supply;

public sealed record SupplyRequest : GoalRequest
{
    [FromQuery(Name = "injector"), Description("Number of the injectors of the chain; those that the maker fitted when left out.")]
    public string? Injector { get; init; }

    [FromQuery(Name = "pump"), Description("Number of the pump of the chain; the one that the maker fitted when left out.")]
    public string? Pump { get; init; }

    [FromQuery(Name = "pump-voltage"), Description("At the pump; 13.5 V when left out.")]
    public string? PumpVoltage { get; init; }

    [FromQuery(Name = "line-loss"), Description("Pressure lost between pump and rail at line-loss-flow: 0.2 bar; common practice when left out, and no limit is drawn from it.")]
    public string? LineLoss { get; init; }

    [FromQuery(Name = "line-loss-flow"), Description("Flow through the line when line-loss was measured: 120 L/h; the loss goes with its square.")]
    public string? LineLossFlow { get; init; }

    [FromQuery(Name = "return"), Description("What flows back to the tank at the goal ÷ what is burnt: 20 %; common practice for rails with a return when left out, else nothing.")]
    public string? Return { get; init; }

    [FromQuery(Name = "return-capacity"),
        Description("What regulator and return line carry back without the pressure rising: 180 L/h; as recorded of the regulator when left out.")]
    public string? ReturnCapacity { get; init; }

    /// <summary>The question, once the rules have passed.</summary>
    internal SupplyQuestion ToQuestion(Part? second, Part? injector, Part? pump, FamilyFacts facts)
    {
        var variant = Variant ?? "";
        return new SupplyQuestion(ToGoal(second))
        {
            Injector = injector ?? FittedByRole.Find(facts, variant, Roles.Injector),
            Pump = pump ?? FittedByRole.Find(facts, variant, Roles.FuelPump),
            Regulator = FittedByRole.Find(facts, variant, Roles.FuelRegulator),
            PumpVoltage = Find(PumpVoltage, Dimension.Voltage),
            LineLoss = FindRange(LineLoss, Dimension.Pressure),
            LineLossFlow = FindRange(LineLossFlow, Dimension.VolumeFlow),
            Return = FindRange(Return, Dimension.Ratio),
            ReturnCapacity = FindRange(ReturnCapacity, Dimension.VolumeFlow),
        };
    }

    internal Permalink LinkToAnswer(string path) => LinkTo(path)
        .With("injector", Injector).With("pump", Pump).With("pump-voltage", PumpVoltage).With("line-loss", LineLoss).With("line-loss-flow", LineLossFlow)
        .With("return", Return).With("return-capacity", ReturnCapacity);
}

internal sealed class SupplyRules : GoalRules<SupplyRequest>
{
    public SupplyRules()
    {
        RuleFor(request => request.Injector).MustBeNumber().When(request => request.Injector is not null);
        RuleFor(request => request.Pump).MustBeNumber().When(request => request.Pump is not null);
        RuleFor(request => request.PumpVoltage).MustBeRange(Dimension.Voltage);
        RuleFor(request => request.LineLoss).MustBeRange(Dimension.Pressure);
        RuleFor(request => request.LineLossFlow).MustBeRange(Dimension.VolumeFlow);
        RuleFor(request => request.Return).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.ReturnCapacity).MustBeRange(Dimension.VolumeFlow);
    }
}
