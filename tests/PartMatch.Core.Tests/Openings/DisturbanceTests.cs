using PartMatch.Core.Openings;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Openings;

/// <summary>A cover over a head over a piston; a plug in the head; a belt beside them.</summary>
public sealed class DisturbanceTests
{
    private static readonly string[] _both = ["lark", "swift"];

    private static TestFamily Engine() => new TestFamily().Variant("lark").Variant("swift")
        .Place("belt", _ => { }).Place("cover", _ => { }).Place("head", _ => { }).Place("piston", _ => { }).Place("seal", _ => { })
        .OffFirst("piston", "head").OffFirst("head", "cover").Renewed("cover", "seal");

    [Fact]
    public void Changed_position_is_disturbed_with_all_that_comes_off_first_and_its_chain()
    {
        var disturbed = Disturbance.Of(Engine().Facts(), _both, ["piston"], _ => true);

        Assert.Equal(["cover", "head", "piston"], disturbed.Keys.Order());
        Assert.Equal(["piston", "head", "cover"], disturbed["cover"].Chain);
        Assert.Equal((DisturbedBy.Itself, DisturbedBy.Way), (disturbed["piston"].By, disturbed["cover"].By));
    }

    [Fact]
    public void Changed_position_without_openings_is_disturbed_alone() =>
        Assert.Equal(["belt"], Disturbance.Of(Engine().Facts(), _both, ["belt"], _ => true).Keys);

    [Fact]
    public void What_is_not_there_need_not_come_off_and_keeps_nothing_else_on() =>
        Assert.Equal(["piston"], Disturbance.Of(Engine().Facts(), _both, ["piston"], position => position != "head").Keys);

    [Fact]
    public void Opening_of_another_engine_does_not_count() =>
        Assert.DoesNotContain("belt", Disturbance.Of(Engine().OffFirst("head", "belt", null, "swift").Facts(), ["lark"], ["head"], _ => true).Keys);

    [Fact]
    public void Opening_of_either_engine_counts() =>
        Assert.Contains("belt", Disturbance.Of(Engine().OffFirst("head", "belt", null, "swift").Facts(), _both, ["head"], _ => true).Keys);

    [Fact]
    public void Retracted_opening_does_not_count() =>
        Assert.DoesNotContain("belt", Disturbance.Of(Engine().OffFirst("head", "belt", TestFamily.Retracted()).Facts(), _both, ["head"], _ => true).Keys);

    [Fact]
    public void What_is_renewed_is_changed_for_what_was_opened_and_never_for_itself()
    {
        var disturbed = Disturbance.Of(Engine().OffFirst("seal", "cover").Facts(), _both, ["head", "seal"], _ => true);

        Assert.Equal((DisturbedBy.Renewal, DisturbedBy.Way), (disturbed["seal"].By, disturbed["cover"].By));
        Assert.Equal(["head", "cover", "seal"], disturbed["seal"].Chain);
    }

    [Fact]
    public void What_is_changed_though_nothing_asks_for_it_is_changed_itself() =>
        Assert.Equal(DisturbedBy.Itself, Disturbance.Of(Engine().OffFirst("seal", "cover").Facts(), _both, ["seal"], _ => true)["seal"].By);

    [Fact]
    public void Of_two_ways_the_shorter_is_told() =>
        Assert.Equal(["piston", "cover"], Disturbance.Of(Engine().OffFirst("piston", "cover").Facts(), _both, ["piston"], _ => true)["cover"].Chain);
}
