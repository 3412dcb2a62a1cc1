using System.ComponentModel;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Web.Http;

namespace PartMatch.Web.Injectors;

public sealed record InjectorRequest : GoalRequest
{
    [FromQuery(Name = "displacement"), Description("Of the whole engine; as the variant has it when left out.")]
    public string? Displacement { get; init; }

    [FromQuery(Name = "idle-speed"), Description("As the variant has it when left out.")]
    public string? IdleSpeed { get; init; }

    [FromQuery(Name = "idle-manifold"), Description("Manifold pressure at idle, gauge, so negative: -0.65 bar; common practice when left out.")]
    public string? IdleManifold { get; init; }

    [FromQuery(Name = "altitude"), Description("Height above the sea: 500 m; 0 m when left out.")]
    public string? Altitude { get; init; }

    [FromQuery(Name = "charge-temperature"), Description("Of the air in the manifold at the goal: 50 degC; common practice by induction when left out.")]
    public string? ChargeTemperature { get; init; }

    [FromQuery(Name = "volumetric-efficiency"), Description("Against the air in the manifold: 90 %; a published range when left out.")]
    public string? VolumetricEfficiency { get; init; }

    [FromQuery(Name = "lambda"), Description("Air-fuel ratio at the goal ÷ stoichiometric: 0.87; common practice when left out.")]
    public string? Lambda { get; init; }

    [FromQuery(Name = "measured-pressure"),
        Description("Dry absolute air pressure where the power was measured: 98 kPa. With measured-temperature it is also shown in the reference air of ISO 1585.")]
    public string? MeasuredPressure { get; init; }

    [FromQuery(Name = "measured-temperature"), Description("Of the air where the power was measured: 30 degC.")]
    public string? MeasuredTemperature { get; init; }

    /// <summary>The question, once the rules have passed.</summary>
    /// <param name="second">The part that staged-with= names.</param>
    internal InjectorQuestion ToQuestion(Part? second) => ToGoal(second) with
    {
        Displacement = Find(Displacement, Dimension.Volume),
        IdleSpeed = Find(IdleSpeed, Dimension.Speed),
        IdleManifold = FindRange(IdleManifold, Dimension.Pressure),
        Air = new AirTyped
        {
            Altitude = FindRange(Altitude, Dimension.Length),
            ChargeTemperature = FindRange(ChargeTemperature, Dimension.Temperature),
            VolumetricEfficiency = FindRange(VolumetricEfficiency, Dimension.Ratio),
            Lambda = FindRange(Lambda, Dimension.Ratio),
            MeasuredPressure = FindRange(MeasuredPressure, Dimension.Pressure),
            MeasuredTemperature = FindRange(MeasuredTemperature, Dimension.Temperature),
        },
    };

    internal Permalink LinkToAnswer(string path) => LinkTo(path)
        .With("displacement", Displacement).With("idle-speed", IdleSpeed).With("idle-manifold", IdleManifold).With("altitude", Altitude)
        .With("charge-temperature", ChargeTemperature).With("volumetric-efficiency", VolumetricEfficiency).With("lambda", Lambda)
        .With("measured-pressure", MeasuredPressure).With("measured-temperature", MeasuredTemperature);
}

internal sealed class InjectorRules : GoalRules<InjectorRequest>
{
    public InjectorRules()
    {
        RuleFor(request => request.Displacement).MustBeRange(Dimension.Volume);
        RuleFor(request => request.IdleSpeed).MustBeRange(Dimension.Speed);
        RuleFor(request => request.IdleManifold).MustBeRange(Dimension.Pressure);
        RuleFor(request => request.Altitude).MustBeRange(Dimension.Length);
        RuleFor(request => request.ChargeTemperature).MustBeRange(Dimension.Temperature);
        RuleFor(request => request.VolumetricEfficiency).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.Lambda).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.MeasuredPressure).MustBeRange(Dimension.Pressure);
        RuleFor(request => request.MeasuredTemperature).MustBeRange(Dimension.Temperature);
    }
}
