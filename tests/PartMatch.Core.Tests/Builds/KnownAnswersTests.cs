using PartMatch.Core.Builds;
using Xunit;

namespace PartMatch.Core.Tests.Builds;

/// <summary>What follows from answers that were already given, each way by hand.</summary>
public sealed class KnownAnswersTests
{
    private static readonly HashSet<int> _nothing = [];
    private readonly KnownAnswers _known = new();

    [Fact]
    public void Giving_up_more_than_was_enough_is_enough()
    {
        _known.CanHold(new HashSet<int> { 1 }, given => (true, given));
        Assert.True(_known.CanHold(new HashSet<int> { 1, 2 }, _ => throw new InvalidOperationException("it was known")));
    }

    [Fact]
    public void Giving_up_less_than_was_too_little_is_too_little()
    {
        _known.CanHold(new HashSet<int> { 1, 2 }, _ => (false, new HashSet<int> { 3, 4 }));
        Assert.False(_known.CanHold(new HashSet<int> { 2 }, _ => throw new InvalidOperationException("it was known")));
        Assert.False(_known.CanHold(_nothing, _ => throw new InvalidOperationException("it was known")));
    }

    [Fact]
    public void What_cannot_hold_together_cannot_beside_anything_else()
    {
        _known.CanHold(_nothing, _ => (false, new HashSet<int> { 3, 4 }));
        Assert.False(_known.CanHold(new HashSet<int> { 1, 2, 5 }, _ => throw new InvalidOperationException("it was known")));
        Assert.True(_known.CanHold(new HashSet<int> { 4 }, given => (true, given)));
    }

    [Fact]
    public void A_plan_that_is_forgotten_is_asked_for_again_and_a_conflict_stays()
    {
        _known.CanHold(new HashSet<int> { 1 }, given => (true, given));
        _known.CanHold(new HashSet<int> { 2 }, _ => (false, new HashSet<int> { 1 }));
        _known.ForgetPlans();
        Assert.Null(_known.Find(new HashSet<int> { 1 }));
        Assert.False(_known.Find(new HashSet<int> { 2 }));
    }

    [Fact]
    public void What_was_given_up_and_not_needed_is_not_given_up_the_next_time()
    {
        _known.CanHold(new HashSet<int> { 1, 2, 3 }, _ => (true, new HashSet<int> { 2 }));
        Assert.True(_known.CanHold(new HashSet<int> { 2 }, _ => throw new InvalidOperationException("it was known")));
        Assert.False(_known.CanHold(new HashSet<int> { 1, 3 }, _ => (false, new HashSet<int> { 2 })));
    }

    [Fact]
    public void Giving_up_something_else_is_asked()
    {
        _known.CanHold(new HashSet<int> { 1 }, given => (true, given));
        _known.CanHold(new HashSet<int> { 2 }, _ => (false, new HashSet<int> { 1, 3 }));
        Assert.True(_known.CanHold(new HashSet<int> { 2, 3 }, given => (true, given)));
    }

    [Fact]
    public void What_was_not_found_out_is_asked_again()
    {
        Assert.Null(_known.CanHold(_nothing, given => (null, given)));
        Assert.True(_known.CanHold(_nothing, given => (true, given)));
    }
}
