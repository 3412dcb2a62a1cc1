using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Spans of one position of one variant that overlap, or leave engines out.</summary>
public sealed class SpanFaultTests
{
    [Fact]
    public void Spans_that_overlap_in_part_are_a_fault_that_names_the_overlap()
    {
        var fault = Fitted(BuiltIn("2015-01", "2018-12"), BuiltIn("2017-01", "2021-12")).Only(FaultSort.SpansOverlap);

        Assert.Contains("overlap in part: built from 2017-01-01 and before 2019-01-01,", fault.Text, StringComparison.Ordinal);
        Assert.Equal(["fitments lark,wheel,alder:W-1,2015-01,2018-12,,", "fitments lark,wheel,alder:W-2,2017-01,2021-12,,"], fault.Keys());
        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=wheel&part=alder:W-1&built=2017-01-01", fault.Fit);
        Assert.Equal((Severity.Doubtful, "wheel"), (fault.Severity, fault.Position));
    }

    [Fact]
    public void One_span_inside_another_is_told_as_that() =>
        Assert.Contains("one inside the other", Fitted(Span.Always, Serials(1000, null)).Only(FaultSort.SpansOverlap).Text, StringComparison.Ordinal);

    [Fact]
    public void Equal_spans_are_alternatives_and_no_fault()
    {
        Assert.Empty(Fitted(BuiltIn("2015-01", "2018-12"), BuiltIn("2015-01", "2018-12")).Faults(FaultSort.SpansOverlap));
        Assert.Empty(Fitted(Span.Always, Span.Always).Faults(FaultSort.SpansOverlap));
    }

    [Fact]
    public void Spans_that_are_equal_as_far_as_the_variant_was_built_are_no_fault() =>
        Assert.Empty(Fitted(Span.Always, BuiltIn("2015-01", null), variant: BuiltIn("2015-01", "2020-12")).Faults(FaultSort.SpansOverlap));

    [Theory]
    [InlineData(1000, 1001, 0, 0)] // one ends where the other begins
    [InlineData(1000, 1000, 1, 0)] // number 1000 in both
    [InlineData(1000, 1002, 0, 1)] // number 1001 in none
    public void Spans_are_held_against_each_other_number_by_number(long to, long from, int overlaps, int gaps)
    {
        var family = Fitted(Serials(null, to), Serials(from, null));

        Assert.Equal((overlaps, gaps), (family.Faults(FaultSort.SpansOverlap).Count, family.Faults(FaultSort.SpansGap).Count));
    }

    [Fact]
    public void A_gap_names_the_engines_of_which_nothing_is_recorded()
    {
        var fault = Fitted(BuiltIn(null, "2016-12"), BuiltIn("2018-01", null)).Only(FaultSort.SpansGap);

        Assert.Contains("Nothing is recorded for built from 2017-01-01 and before 2018-01-01.", fault.Text, StringComparison.Ordinal);
        Assert.Equal(Severity.Missing, fault.Severity);
    }

    [Theory]
    [InlineData("2015-01", "2020-12", 0)]
    [InlineData("2014-12", "2020-12", 1)] // the first month
    [InlineData("2015-01", "2021-01", 1)] // the last
    [InlineData(null, null, 0)] // nobody recorded when the variant was built
    public void Before_the_first_span_and_after_the_last_only_engines_that_were_built_are_missing(string? from, string? to, int gaps) =>
        Assert.Equal(gaps, Fitted(BuiltIn("2015-01", "2017-12"), BuiltIn("2018-01", "2020-12"), variant: BuiltIn(from, to)).Faults(FaultSort.SpansGap).Count);

    [Fact]
    public void A_span_by_number_and_one_by_date_are_not_compared()
    {
        var family = Fitted(Serials(null, 1000), BuiltIn("2018-01", null));

        Assert.Empty(family.Faults(FaultSort.SpansOverlap));
        Assert.Empty(family.Faults(FaultSort.SpansGap));
    }

    [Fact]
    public void A_position_without_any_span_has_no_gap_but_is_not_recorded()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning());

        Assert.Empty(family.Faults(FaultSort.SpansGap));
        Assert.Equal(["Wheel on lark: what the maker fitted is not recorded", "Wheel on swift: what the maker fitted is not recorded"], family.Faults(FaultSort.NotRecorded).Select(fault => fault.Title));
    }

    private static TestFamily Fitted(Span one, Span other, Span? variant = null) => new TestFamily().Variant("lark", variant).Place("wheel", wheel => wheel.CannotAlterRunning())
        .Wheel("W-1").Wheel("W-2").Fitted("lark", "wheel", "W-1", one).Fitted("lark", "wheel", "W-2", other);
}
