namespace PartMatch.Core.Catalogue;

/// <summary>One pass of tightening what sits at a position, as one source states it.</summary>
/// <param name="Pass">1 for the first; all passes of one source, in their order, tighten the fastener.</param>
/// <param name="Turn">A torque, or an angle by which it is turned on from where the pass before it ended.</param>
/// <param name="Lubrication">The threads and the face under the head as the source wants them; null when not recorded.</param>
/// <param name="Sequence">In which order the pieces are taken, in words.</param>
/// <param name="SingleUse">Null when not recorded.</param>
public sealed record TorquePass(
    string Variant, string Position, int Pass, QuantityReading Turn, Lubrication? Lubrication, string? Sequence, SingleUse? SingleUse, Evidence Evidence, string? Note)
{
    /// <summary>The engines that the source says it of.</summary>
    public Span Span { get; init; } = Span.Always;
}

/// <summary>The threads and the face under the head while tightening.</summary>
public enum Lubrication
{
    /// <summary>Steel as it comes, black or bare, without oil.</summary>
    Dry,
    Oiled,
    ZincPlated,
    CadmiumPlated,

    /// <summary>Sealant, paste, flake coating: whatever the note says.</summary>
    Other,
}

/// <summary>Must the fastener be renewed once it was tightened?</summary>
public enum SingleUse
{
    No,

    /// <summary>Renewed for its lock or seal; it is not stretched for good.</summary>
    Yes,

    /// <summary>Renewed because tightening stretches it for good.</summary>
    Stretch,
}
