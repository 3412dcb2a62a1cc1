using BenchmarkDotNet.Attributes;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using UnitsNet;

namespace PartMatch.Benchmarks.Injectors;

/// <summary>One goal with ranges against a catalogue of 200 injectors; beside it the same physics without ranges, reasons and records.</summary>
[MemoryDiagnoser]
public class SizingBenchmarks
{
    private const int Injectors = 200;

    private static readonly IReadOnlyList<Part> _catalogue = InjectorCatalogue.Of(Injectors);
    private static readonly double[] _flowsCm3Min = [.. Enumerable.Range(0, Injectors).Select(index => 150.0 + (index * 7 % 1000))];

    /// <summary>The sums as the product does them: ranges, dead-time tables, idle, air side, warnings, reasons.</summary>
    [Benchmark]
    public object Size_200_with_ranges() => InjectorSizing.Size(InjectorCatalogue.Goal, _catalogue, InjectorCatalogue.Engine);

    /// <summary>The floor: nine lines of arithmetic for each injector, expected figures only.</summary>
    [Benchmark(Baseline = true)]
    public double Bare_numbers()
    {
        var (powerW, bsfcKgJ, densityKgM3, cycleS) = (180_000.0, 330e-3 / 3.6e6, 745.0, 120 / 6800.0);
        var massKg = powerW * bsfcKgJ * cycleS / 3;
        var widest = 0.0;
        foreach (var flow in _flowsCm3Min)
        {
            var heldOpenKgS = flow * 1e-6 / 60 * Math.Sqrt(683.8 * densityKgM3);
            widest = Math.Max(widest, ((massKg / heldOpenKgS) + 0.0008) / cycleS);
        }

        return widest;
    }

    /// <summary>The same nine lines with a general library of units, expected figures only.</summary>
    [Benchmark]
    public double UnitsNet_quantities()
    {
        var fuelFlow = MassFlow.FromKilogramsPerSecond((double)Power.FromKilowatts(180).Watts * BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(330).KilogramsPerJoule);
        var cycle = Duration.FromSeconds(2 / RotationalSpeed.FromRevolutionsPerMinute(6800).RevolutionsPerSecond);
        var mass = fuelFlow * cycle / 3;
        var (rated, fuel) = (Density.FromKilogramsPerCubicMeter(683.8), Density.FromKilogramsPerCubicMeter(745));
        var widest = Ratio.Zero;
        foreach (var flow in _flowsCm3Min)
        {
            var heldOpen = MassFlow.FromKilogramsPerSecond(
                VolumeFlow.FromCubicCentimetersPerMinute(flow).CubicMetersPerSecond * Math.Sqrt(rated.KilogramsPerCubicMeter * fuel.KilogramsPerCubicMeter));
            var pulse = Duration.FromSeconds(mass.Kilograms / heldOpen.KilogramsPerSecond) + Duration.FromMilliseconds(0.8);
            var duty = Ratio.FromDecimalFractions(pulse / cycle);
            widest = duty > widest ? duty : widest;
        }

        return widest.DecimalFractions;
    }
}
