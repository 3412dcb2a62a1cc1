namespace PartMatch.Core.Fit;

/// <summary>What several neighbours that may be there come to: an engine has one of them, and which one is not known (Kleene 1952).</summary>
internal static class Alternatives
{
    /// <summary>The reason all agree on; the best where one of them is chosen; else what is said of several that differ.</summary>
    public static Reason Weigh(IReadOnlyList<Reason> each, bool isChosen, Func<Reason> ofSeveral) =>
        isChosen || each.All(reason => reason.Met == each[0].Met) ? Best(each) : ofSeveral();

    public static Reason Best(IReadOnlyList<Reason> each) => each.MinBy(reason => Order(reason.Met))!; // never empty

    public static int Order(Met met) => met switch { Met.Yes => 0, Met.NotKnown => 1, _ => 2 };
}
