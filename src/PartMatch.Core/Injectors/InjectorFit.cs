using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>Will it fit, in short.</summary>
/// <param name="Link">The address of the whole fit answer.</param>
public sealed record InjectorFit(Headline Headline, Sureness Sureness, string Link)
{
    /// <summary>
    /// What is not as the place wants it or not known to be, besides the rated flow: features, and joints where no feature is named; ordered.
    /// </summary>
    public IReadOnlyList<string> Differs { get; init; } = [];

    /// <summary>
    /// No feature that the place demands speaks against it but its flow, which a goal of another power asks for anyway. Of its dead time
    /// <see cref="DeadTime"/> speaks.
    /// </summary>
    public bool OnlyFlowDiffers { get; init; }

    /// <summary>Its dead time at the goal against that of what the maker fitted; absent for that one itself and for parts that are no injectors.</summary>
    public DeadTimeAgainstFitted? DeadTime { get; init; }

    /// <summary>What the maker fitted has that dead time at the goal; absent where it is not known.</summary>
    public string? FittedDeadTime { get; init; }

    /// <summary>
    /// How many of the injectors that a cylinder gets have a recorded place, in words; absent where all have. The headline speaks of those only.
    /// </summary>
    public string? OnlyFor { get; init; }

    /// <summary>The maker fitted this very part in the variant.</summary>
    public bool IsFitted { get; init; }
}

/// <summary>A dead time at the goal against that of what the maker fitted.</summary>
public enum DeadTimeAgainstFitted
{
    Same,
    Another,

    /// <summary>One of the two is not recorded, or one for all was given in the question.</summary>
    NotKnown,
}
