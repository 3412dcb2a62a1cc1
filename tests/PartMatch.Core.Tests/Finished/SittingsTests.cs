using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Finished;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Builds;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Finished;

/// <summary>What is told of a finished swift: its wheel sits on its shaft, its cap on neither.</summary>
public sealed class SittingsTests
{
    private static readonly Build _build = new("try", "A try", "finch-9", new Donor("lark", null, null, null, []), "swift", "EUR");

    private static TestFamily Family => WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"),
        shaft => shaft.CannotAlterRunning().Length("width"))
        .Place("cap", cap => cap.CannotAlterRunning().Length("rim"))
        .Wheel("WHEEL-1", Has("bore", Mm(10))).Wheel("WHEEL-2", Has("bore", Mm(10))).Shaft("SHAFT-1", Has("width", Mm(10)))
        .Shaft("SHAFT-2", Has("width", Mm(10)))
        .Part("CAP-1", "cap", Has("rim", Mm(10))).Part("CAP-2", "cap", Has("rim", Mm(10)))
        .Fitted("lark", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("lark", "cap", "CAP-1")
        .Fitted("swift", "wheel", "WHEEL-2").Fitted("swift", "shaft", "SHAFT-2").Fitted("swift", "cap", "CAP-2")
        .Joint("seat", "wheel.bore", "shaft.width", min: -0.1m, max: 0.1m);

    private static Sitting Told(params SittingLine[] lines) => new("2027-03", lines);

    // The shaft is the lark's; the cap is as well, and nothing joins it to the wheel.
    [Fact]
    public void Finding_names_the_neighbours_that_can_matter_and_are_not_as_built()
    {
        var findings = Sittings.Findings(Family.Facts(), _build, Told(
            new SittingLine("wheel", Id("WHEEL-1"), FindingOutcome.Yes), new SittingLine("shaft", Id("SHAFT-1")), new SittingLine("cap", Id("CAP-1"))));

        var finding = Assert.Single(findings);
        Assert.Equal((Id("WHEEL-1"), "swift", "wheel", Axis.Mounts, FindingOutcome.Yes),
            (finding.Part, finding.Variant, finding.Position, finding.Axis, finding.Outcome));
        Assert.Equal([$"shaft={Id("SHAFT-1")}"], finding.With);
    }

    [Fact]
    public void Neighbour_that_is_as_built_is_not_named_and_one_that_was_taken_out_is()
    {
        IReadOnlyList<string> With(string shaft) =>
            Sittings.Findings(Family.Facts(), _build, Told(new SittingLine("wheel", Id("WHEEL-1"), FindingOutcome.Yes),
                new SittingLine("shaft", shaft)))[0].With;

        Assert.Empty(With(Id("SHAFT-2")));
        Assert.Equal(["shaft=none"], With(Part.None));
    }

    [Fact]
    public void Line_of_which_nothing_is_told_becomes_no_finding_and_one_with_both_becomes_two()
    {
        var findings = Sittings.Findings(Family.Facts(), _build, Told(
            new SittingLine("wheel", Id("WHEEL-1"), FindingOutcome.WithWork, FindingOutcome.Same, "reamed"), new SittingLine("shaft", Id("SHAFT-2"))));

        Assert.Equal([(Axis.Mounts, FindingOutcome.WithWork, "reamed"), (Axis.Runs, FindingOutcome.Same, "reamed")],
            findings.Select(one => (one.Axis, one.Outcome, one.Note ?? "")));
    }

    [Theory]
    [InlineData(null, EvidenceGrade.TrialFitted)]
    [InlineData(FindingOutcome.Same, EvidenceGrade.RanUnderLoad)]
    [InlineData(FindingOutcome.Differently, EvidenceGrade.RanUnderLoad)]
    public void Grade_is_that_of_an_engine_that_ran_only_where_something_is_said_of_running(FindingOutcome? runs, EvidenceGrade grade) =>
        Assert.Equal(grade, Sittings.GradeOf(Told(new SittingLine("wheel", Id("WHEEL-1"), FindingOutcome.Yes, runs))));

    // A trial fit is the first rank of what is said on mounting, and proves; it was tried with the lark's shaft, not with the swift's.
    [Fact]
    public void What_was_told_decides_the_same_question_afterwards_and_no_other()
    {
        var told = Sittings.Findings(Family.Facts(), _build, Told(new SittingLine("wheel", Id("WHEEL-1"), FindingOutcome.Yes),
            new SittingLine("shaft", Id("SHAFT-1"))))[0];
        var after = Family.Found("fi-1", "WHEEL-1", told.Outcome, By(EvidenceGrade.TrialFitted), told.Variant, told.Position, null, "shaft=SHAFT-1").Facts();
        FitAnswer Ask(string shaft) => FitCheck.Decide(after, new FitQuestion("swift", "wheel", after.GetPart(Id("WHEEL-1")))
        {
            With = new Dictionary<string, Part?> { ["shaft"] = after.GetPart(Id(shaft)) },
        });

        Assert.Equal((Mounts.Yes, Sureness.Proven), (Ask("SHAFT-1").Mounts.Value, Ask("SHAFT-1").Mounts.Sureness));
        Assert.NotEqual(Sureness.Proven, Ask("SHAFT-2").Mounts.Sureness);
    }

    [Theory]
    [InlineData("build try, version 3", true)]
    [InlineData("build try-2, version 3", false)]
    [InlineData("Build try, version 3", false)]
    [InlineData(null, false)]
    public void Evidence_is_of_the_build_that_its_source_names(string? source, bool isOf)
    {
        Assert.Equal(isOf, Sittings.IsOf("try", Document with { Source = source }));
        Assert.Equal("build try, version 3", Sittings.SourceOf("try", 3));
    }

    [Fact]
    public void Parts_list_holds_what_was_told_last_and_else_what_is_planned()
    {
        var early = By(EvidenceGrade.TrialFitted, "ev-1") with { Date = "2027-01", Source = Sittings.SourceOf("try", 1) };
        var late = By(EvidenceGrade.RanUnderLoad, "ev-2") with { Date = "2027-02", Source = Sittings.SourceOf("try", 1) };
        var other = By(EvidenceGrade.TrialFitted, "ev-3") with { Date = "2027-03", Source = "bench sheet 4" };
        var told = new TestBuild(Family
            .Found("fi-1", "WHEEL-2", FindingOutcome.No, early, "swift").Found("fi-2", "WHEEL-1", FindingOutcome.Yes, late, "swift")
            .Found("fi-3", "WHEEL-1", FindingOutcome.Same, late, "swift")
            .Found("fi-4", "WHEEL-2", FindingOutcome.Yes, other, "swift"));
        var list = PartsLists.Of(told.Facts(), told.Build, told.Plan());

        var wheel = Assert.Single(list.Parts, part => part.Position == "wheel");
        Assert.Equal((Id("WHEEL-1"), ListedStanding.Built), (Assert.Single(wheel.OneOf), wheel.Standing));
        Assert.All(list.Parts.Where(part => part.Position != "wheel"), part => Assert.Equal(ListedStanding.Planned, part.Standing));
        Assert.Equal([("fi-1", FindingOutcome.No), ("fi-2,fi-3", FindingOutcome.Yes)],
            list.Learned.OrderBy(line => line.Findings[0]).Select(line => (string.Join(',', line.Findings), line.Mounts ?? default)));
        Assert.Equal(2, list.Sources.Count);
    }
}
