using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class PartDifferencesTests
{
    private static readonly Part _asked = WrenFamily.Pump("harl:1", "short", "clockwise", 12.0m);

    // No family reads a feature here: what matters is what a rule of the kind reads.
    private static readonly MatteringFeatures _mattering = new([]);

    [Theory]
    [InlineData("short", "anticlockwise", 12.0, true)] // rotation cannot be seen and matters
    [InlineData("long", "anticlockwise", 12.0, false)] // the body can be seen
    [InlineData("short", "clockwise", 12.0, false)] // no difference that matters
    [InlineData("short", "clockwise", 12.2, false)] // 11.9…12.1 and 12.1…12.3 touch: no difference for certain
    [InlineData("short", "clockwise", 12.3, true)] // the vane matters and the photo, good to 2 mm, does not show it
    [InlineData("short", "clockwise", 16.2, true)] // 12.1 + 2 = 16.1 − 2: the photo could still show either
    [InlineData("short", "clockwise", 16.3, false)] // 12.1 + 2 < 16.2 − 2: the photo shows it
    public void Same_to_the_eye_is_what_no_photo_separates_though_it_matters(string body, string rotation, double vaneHeightMm, bool same)
    {
        var other = WrenFamily.Pump("harl:2", body, rotation, (decimal)vaneHeightMm);
        Assert.Equal(same, PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, _asked, other));
        Assert.Equal(same, PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, other, _asked));
    }

    [Fact]
    public void What_is_recorded_on_one_only_is_not_the_same_to_the_eye()
    {
        var unseen = WrenFamily.Pump("harl:2", null, "anticlockwise", 12.0m);
        Assert.False(PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, _asked, unseen));
        Assert.False(PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, unseen, _asked));
    }

    [Fact]
    public void What_is_recorded_on_neither_does_not_count_but_something_must_be()
    {
        Part Seen(string id, string rotation) => WrenFamily.Pump(id, "short", rotation, null);
        Part Unseen(string id, string rotation) => WrenFamily.Pump(id, null, rotation, null);
        Assert.True(PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, Seen("harl:1", "clockwise"), Seen("harl:2", "anticlockwise")));
        Assert.False(PartDifferences.AreSameToTheEye(_mattering, WrenFamily.PumpKind, Unseen("harl:1", "clockwise"), Unseen("harl:2", "anticlockwise")));
    }

    [Fact]
    public void Differences_list_what_matters_first_and_only_what_is_recorded_on_both()
    {
        var one = WrenFamily.Pump("harl:1", "short", "clockwise", 12.0m, blades: 6);
        var two = WrenFamily.Pump("harl:2", "short", "anticlockwise", 12.1m, blades: 7);
        Assert.Equal(
            [
                new PartDifference("rotation", "rotation", "clockwise", "anticlockwise", Matters: true),
                new PartDifference("blades", "number of blades", "6", "7", Matters: false), // no rule reads it
                new PartDifference("vane-height", "vane height", "12.00 mm ± 0.1", "12.10 mm ± 0.1", Matters: false), // within tolerance of each other
            ],
            PartDifferences.Between(_mattering, WrenFamily.PumpKind, one, two));
        Assert.Empty(PartDifferences.Between(_mattering, WrenFamily.PumpKind, one, WrenFamily.Pump("harl:3", null, null, null)));
    }

    [Fact]
    public void Sources_that_exclude_each_other_are_no_difference()
    {
        var disputed = _asked with
        {
            Values = [.. _asked.Values, new RecordedValue("rotation", new ChoiceReading("anticlockwise"), WrenFamily.Document)],
        };
        Assert.Empty(PartDifferences.Between(_mattering, WrenFamily.PumpKind, _asked, disputed));
    }

    // Uncertainty 0.05 mm on each reading, no tolerance: the values must lie more than 0.10 mm apart.
    [Theory]
    [InlineData(12.00, 12.09, Met.No)]
    [InlineData(12.00, 12.10, Met.No)]
    [InlineData(12.00, 12.11, Met.Yes)]
    public void A_check_separates_what_lies_further_apart_than_twice_its_uncertainty(double one, double two, Met separates)
    {
        var caliper = new Check("vane-height", Method.Caliper, 6, 0.00005m, null);
        Assert.Equal(separates, PartDifferences.Separates(caliper, Height(one), Height(two)));
        Assert.Equal(separates, PartDifferences.Separates(caliper, Height(two), Height(one)));
    }

    [Fact]
    public void A_measurement_of_unknown_uncertainty_is_not_known_to_separate_but_a_label_is_read()
    {
        Assert.Equal(Met.NotKnown, PartDifferences.Separates(new Check("vane-height", Method.Caliper, 6, null, null), Height(12), Height(20)));
        Assert.Equal(Met.No, PartDifferences.Separates(new Check("vane-height", Method.Caliper, 6, null, null), Height(12), Height(12)));
        Assert.Equal(Met.Yes, PartDifferences.Separates(new Check("vane-height", Method.Label, 1, null, null), Height(12), Height(20)));
    }

    [Fact]
    public void Checks_that_separate_come_cheapest_first_and_say_which_work_before_paying()
    {
        var checks = TellApart.Checks(WrenFamily.PumpKind, _asked, WrenFamily.Pump("harl:2", "short", "anticlockwise", 13.0m));
        Assert.Equal(
            [("rotation", Method.Label, 2m, true), ("vane-height", Method.Caliper, 6m, false), ("rotation", Method.Bench, 20m, false)],
            checks.Select(check => (check.Feature, check.Check, check.Minutes, check.BeforePaying)));
        Assert.Equal("rotation, by its label, 2 min", checks[0].Text);
        Assert.Empty(TellApart.Checks(WrenFamily.PumpKind, _asked, _asked));
    }

    private static KnownValue Height(double mm) => ValueSelection.Of(WrenFamily.Pump("harl:9", null, null, (decimal)mm, spreadMm: 0), "vane-height");
}
