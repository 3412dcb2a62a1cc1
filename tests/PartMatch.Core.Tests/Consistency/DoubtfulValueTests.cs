using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Values that count and yet are to be looked at: contradicted by a weaker source, or far from all others.</summary>
public sealed class DoubtfulValueTests
{
    [Fact]
    public void A_weaker_source_that_excludes_the_value_that_counts_is_told()
    {
        var fault = Wheels().Wheel("W-1", Has("bore", Mm(10, 1)), Has("bore", Mm(14), By(EvidenceGrade.Measured))).Wheel("W-2", Has("bore", Mm(10, 1)))
            .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2").Only(FaultSort.ValuesContradicted);

        Assert.Equal((Severity.Doubtful, "wheel"), (fault.Severity, fault.Position));
        Assert.Contains("14 mm (ev-measured", fault.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weaker_source_that_touches_the_value_or_was_retracted_contradicts_nothing()
    {
        // 10 ± 1 ends at 11, and ends are closed.
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10, 1)), Has("bore", Mm(11), By(EvidenceGrade.Measured))).Faults(FaultSort.ValuesContradicted));
        Assert.NotEmpty(Wheels().Wheel("W-1", Has("bore", Mm(10, 1)), Has("bore", Mm(11.001m), By(EvidenceGrade.Measured))).Faults(FaultSort.ValuesContradicted));
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10, 1)), Has("bore", Mm(14), Retracted())).Faults(FaultSort.ValuesContradicted));
    }

    [Theory]
    [InlineData(-10, 1)] // another sign
    [InlineData(0, 0)]
    [InlineData(0.99, 1)] // a tenth of the least, 10, is 1
    [InlineData(1, 0)]
    [InlineData(300, 0)] // ten times the most, 30
    [InlineData(300.1, 1)]
    public void A_value_far_from_every_other_of_its_kind_is_told(double bore, int faults) =>
        Assert.Equal(faults, Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(20))).Wheel("W-3", Has("bore", Mm(30)))
            .Wheel("W-4", Has("bore", Mm((decimal)bore))).Faults(FaultSort.ValueFarOff).Count);

    [Fact]
    public void Two_others_or_others_of_both_signs_tell_nothing_of_what_is_usual()
    {
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(20))).Wheel("W-3", Has("bore", Mm(-5))).Faults(FaultSort.ValueFarOff));
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(-2))).Wheel("W-3", Has("bore", Mm(-3))).Wheel("W-4", Has("bore", Mm(400)))
            .Faults(FaultSort.ValueFarOff));
    }

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops));
}
