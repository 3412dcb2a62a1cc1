namespace PartMatch.Core.Builds;

/// <summary>These parts at these positions.</summary>
internal sealed record At(string Position, string Parts);

/// <summary>What the fit of one line asks of the others: if all of these are there, then at least one of the ways out is taken.</summary>
/// <param name="Or">Other choices, any of which mends it.</param>
/// <param name="Works">Works, any of which mends it.</param>
/// <param name="OnTrustAt">The position at which it can be taken on trust; null where it cannot.</param>
internal sealed record LineRule(IReadOnlyList<At> If, IReadOnlyList<At> Or, IReadOnlyList<string> Works, string? OnTrustAt)
{
    /// <summary>Works that are done: they change what a neighbour is, so that it says something only of plans that do them.</summary>
    public IReadOnlyList<string> IfDone { get; init; } = [];

    /// <summary>The position whose part mends it: where something that fits there is still to be found, it is mended too. Null where that is not so.</summary>
    public string? Asks { get; init; }

    /// <summary>Two of the same key say the same, also of a plan in which something is still to be found.</summary>
    public string Key =>
        $"{string.Join('&', If)}&{string.Join('&', IfDone)}=>{string.Join('|', Or)}/{string.Join('|', Works)}/{OnTrustAt}/{Asks}";

    public static LineRule Never(IReadOnlyList<At> together) => new(together, [], [], null);
}

/// <summary>Where all of these are there, a line weighs so much more than its choice alone.</summary>
internal sealed record LineRisk(IReadOnlyList<At> If, long Risk);
