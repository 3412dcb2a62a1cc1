using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Mixture;

/// <summary>Are the parts that fuel touches recorded for this fuel?</summary>
public enum WettedFor
{
    Recorded,

    /// <summary>Nothing is recorded of what its parts stand.</summary>
    NotKnown,

    /// <summary>Recorded for other fuels, and not for this one.</summary>
    OtherFuels,
}

/// <summary>What is recorded of the fuels that a part stands.</summary>
internal static class WettedParts
{
    /// <summary>The code under which parts are recorded for a fuel; pure ethanol is asked of what stands E85 (common practice, no source).</summary>
    public static WettedFor Of(Fuel fuel, QuantityRange? ethanol, Part part)
    {
        if (ValueSelection.Of(part, "wetted-for") is not StatedChoices wetted)
        {
            return WettedFor.NotKnown;
        }

        var needed = (fuel.Code, ethanol) switch
        {
            ("methanol", _) => "m100",
            (_, { High: <= 0.1 }) => "e10",
            (_, { }) or ("e85", _) or ("ethanol", _) => "e85",
            ("petrol-e0", _) => "petrol",
            _ => "e10",
        };
        return wetted.Choices.Contains(needed, StringComparer.Ordinal) ? WettedFor.Recorded : WettedFor.OtherFuels;
    }
}
