namespace PartMatch.Core.Fit;

/// <summary>One of the four words for how sure an answer is, with its fixed meaning.</summary>
public sealed record SurenessMeaning(Sureness Sureness, string Text)
{
    /// <summary>Surest first.</summary>
    public static IReadOnlyList<SurenessMeaning> All { get; } =
    [
        new(Sureness.Proven, "Somebody tried it on such an engine, or measured it there, and nothing that counts says otherwise."),
        new(Sureness.Documented, "The maker says so, in a document or by the numbers; or it was tried or measured, and something weaker says otherwise."),
        new(
            Sureness.Indicated,
            "It follows from measured or documented values, or a builder reports it; or the maker says so, and something weaker says otherwise."),
        new(Sureness.Unproven, "No more than that nothing recorded speaks against it; or inferred, disputed, or not known."),
    ];

    public static string Of(Sureness sureness) => All.First(meaning => meaning.Sureness == sureness).Text;
}
