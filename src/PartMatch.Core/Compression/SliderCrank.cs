namespace PartMatch.Core.Compression;

/// <summary>
/// Where the piston stands at a crank angle. The pin is taken to lie on the cylinder's axis: an offset of a millimetre or two moves the result by less than
/// what is known of the closing.
/// </summary>
/// <param name="StrokeM">Travel of the piston, m.</param>
/// <param name="RodM">Rod length between centres, m; longer than half the stroke.</param>
/// <remarks>
/// x = a + l − a·cos θ − √(l² − a²·sin² θ), a = stroke ÷ 2, θ from top dead centre.
/// Source: Heywood, Internal Combustion Engine Fundamentals, 1988, equations 2.4 to 2.6 (equation numbers from memory).
/// </remarks>
public readonly record struct SliderCrank(double StrokeM, double RodM)
{
    private const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>Throw of the crank, m.</summary>
    public double ThrowM => StrokeM / 2;

    /// <summary>How far the piston stands below its top, m.</summary>
    /// <param name="degrees">Of the crank, after top dead centre; any turn.</param>
    public double BelowTopM(double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees / DegreesPerRadian);
        return ThrowM + RodM - (ThrowM * cosine) - Math.Sqrt((RodM * RodM) - (ThrowM * ThrowM * sine * sine));
    }

    /// <summary>The same as a share of the stroke: 0 at the top, 1 at the bottom.</summary>
    public double ShareBelowTop(double degrees) => BelowTopM(degrees) / StrokeM;

    /// <summary>
    /// The crank angle, 0 to 180 degrees, at which the piston stands that share of the stroke below its top: <see cref="ShareBelowTop"/> turned round.
    /// </summary>
    /// <param name="share">0 to 1.</param>
    /// <remarks>With y = a + l − x, the pin's height over the crank's centre: cos θ = (y² + a² − l²) ÷ (2·a·y), the law of cosines.</remarks>
    public double DegreesAt(double share)
    {
        var height = ThrowM + RodM - (share * StrokeM);
        var cosine = ((height * height) + (ThrowM * ThrowM) - (RodM * RodM)) / (2 * ThrowM * height);
        return Math.Acos(Math.Clamp(cosine, -1, 1)) * DegreesPerRadian;
    }
}
