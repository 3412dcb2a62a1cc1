using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Fit;
using Xunit;
using static PartMatch.Core.Tests.ValveTiming.TimingExamples;

namespace PartMatch.Core.Tests.Compression;

/// <summary>The boosted engine of the examples, whose maker fitted the gasket of 0.60 mm up to serial 41206 and the one of 0.95 mm from then on.</summary>
public sealed class EngineChangeInFitTests
{
    private static readonly FamilyFacts _facts = Family(
        null,
        [
            new Fitment("late", "gasket", ThinGasket.Id, new Span(null, null, null, 41206), 1, null),
            new Fitment("late", "gasket", Gasket.Id, new Span(null, null, 41207, null), 1, null),
        ],
        []);

    // 0.60 + 0.2 = 0.80 mm as built, 0.95 + 0.2 = 1.15 mm with the other.
    [Theory]
    [InlineData(41206L, "squish 1.15 instead of 0.80 mm")]
    [InlineData(41207L, "squish stays 1.15 mm")]
    public void Serial_number_given_decides_what_the_engine_was_built_with(long serial, string expected)
    {
        var change = Ask(new FitQuestion("late", "gasket", Gasket, Serial: serial));

        Assert.Contains(expected, change.Text, StringComparison.Ordinal);
        Assert.Empty(change.Spans);
        Assert.Empty(change.NotKnown);
    }

    [Fact]
    public void Serial_number_not_given_tells_every_stretch_by_itself()
    {
        var change = Ask(new FitQuestion("late", "gasket", Gasket));

        Assert.Equal(["serial before 41207", "serial from 41207"], change.Spans.Select(one => one.When));
        Assert.StartsWith("It hangs on which engine this is; give its serial number or build date. Serial before 41207: ", change.Text, StringComparison.Ordinal);
        Assert.Contains("squish 1.15 instead of 0.80 mm", change.Spans[0].Changes);
        Assert.Empty(change.Spans[1].Changes);
        Assert.Contains("serial before 41207: squish 1.15 instead of 0.80 mm", change.Changes);
    }

    // The gasket beside other pistons: with 9.6 cm3 and 0.60 mm 3.4853 + 1.1349 + 43 + 9.6 = 57.2202: 10.32; with 0.95 mm 59.2533: 10.00.
    [Theory]
    [InlineData(41206L, "compression ratio rises: 10.32 instead of 9.57")]
    [InlineData(41207L, "compression ratio rises: 10.00 instead of 9.30")]
    public void Neighbour_that_the_maker_changed_counts_as_it_was_on_that_engine(long serial, string expected)
    {
        var piston = Of("P-2", "piston", ("bowl-volume", Cm3(9.6m)), ("compression-height", Mm(31)));

        Assert.Contains(expected, Ask(new FitQuestion("late", "piston", piston, Serial: serial)).Changes);
    }

    [Fact]
    public void Place_that_is_said_to_be_empty_is_not_filled_with_what_the_maker_fitted() => Assert.Contains(
        Ask(new FitQuestion("early", "gasket", Gasket, With: new Dictionary<string, Part?> { ["piston"] = null })).NotKnown,
        text => text.Contains("the piston is not known, found nothing put there", StringComparison.Ordinal));

    [Fact]
    public void Engine_whose_parts_never_changed_is_told_once() => Assert.Empty(Ask(new FitQuestion("early", "gasket", Gasket)).Spans);

    private static EngineChange Ask(FitQuestion question) =>
        Assert.IsType<EngineChange>(EngineChangeInFit.Find(_facts, question, question.Part!, FitCheck.Decide(_facts, question)));
}
