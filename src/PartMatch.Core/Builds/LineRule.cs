namespace PartMatch.Core.Builds;

/// <summary>These parts at these positions.</summary>
internal sealed record At(string Position, string Parts);

/// <summary>What the fit of one line asks of the others: if all of these are there, then at least one of the ways out is taken.</summary>
/// <param name="Or">Other choices, any of which mends it.</param>
/// <param name="Works">Works, any of which mends it.</param>
/// <param name="OnTrustAt">The position at which it can be taken on trust; null where it cannot.</param>
internal sealed record LineRule(IReadOnlyList<At> If, IReadOnlyList<At> Or, IReadOnlyList<string> Works, string? OnTrustAt)
{
    /// <summary>Two of the same key say the same.</summary>
    public string Key { get; } =
        $"{string.Join('&', If)}=>{string.Join('|', Or)}/{string.Join('|', Works)}/{OnTrustAt}";

    public static LineRule Never(IReadOnlyList<At> together) => new(together, [], [], null);
}
