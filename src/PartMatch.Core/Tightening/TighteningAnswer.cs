using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Tightening;

/// <summary>What the recorded torques of a fastener, or a typed one, do to the bolt. Nothing in it proposes a torque.</summary>
/// <param name="Fastener">Absent where the question names no place.</param>
/// <param name="Bolt">Absent where thread or place say too little; <paramref name="NotJudged"/> then says why.</param>
/// <param name="Records">One for each source, retracted ones last.</param>
/// <param name="Torque">What the typed torque does; absent where none was typed.</param>
/// <param name="Influences">What makes the most difference to the share of the proof load, greatest first.</param>
/// <param name="Warnings">Of the records as a whole, then those of the typed torque.</param>
/// <param name="SaysNothing">What the sums leave out.</param>
public sealed record TighteningJudged(
    TighteningAsked Asked,
    FastenerShown? Fastener,
    BoltShown? Bolt,
    NotJudged? NotJudged,
    IReadOnlyList<Assumption> Assumed,
    IReadOnlyList<RecordedTightening> Records,
    JudgedTorque? Torque,
    IReadOnlyList<Influence> Influences,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SumWarning> Warnings,
    IReadOnlyList<string> SaysNothing,
    IReadOnlyList<Caution> Cautions) : SumOutcome
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";

    /// <summary>Drawings of this answer; the door fills them in.</summary>
    public IReadOnlyList<PlotLink> Plots { get; init; } = [];
}

/// <summary>The question with its defaults filled in.</summary>
/// <param name="Scatter">Of the preload at one torque, either way; a share.</param>
public sealed record TighteningAsked(
    string? Family, string? Variant, string? Position, string? Part, string? Thread, string? Class, Lubrication? Lubrication, QuantityRange? Torque,
    QuantityRange? NutFactor, double Scatter);

/// <summary>The place and what sits there.</summary>
/// <param name="Parts">The part asked about, or what the maker fitted over the years.</param>
/// <param name="Pieces">For each engine; absent when not recorded, or not the same over the years.</param>
public sealed record FastenerShown(string Position, string Name, IReadOnlyList<FastenerPart> Parts, int? Pieces);

public sealed record FastenerPart(string Part, string Name);

/// <summary>The bolt as the sums take it.</summary>
/// <param name="Class">Absent where it is not known.</param>
/// <param name="ProofLoad">N: the load that it takes without staying longer.</param>
/// <param name="UltimateLoad">N: the least load that breaks it.</param>
public sealed record BoltShown(string Thread, string? Class, QuantityRange StressArea, QuantityRange ProofLoad, QuantityRange UltimateLoad);

/// <summary>Why there is no sum.</summary>
public sealed record NotJudged(string Code, string Reason);

/// <summary>How one source tightens the fastener, and what that does.</summary>
/// <param name="Judged">The last torque; absent where <paramref name="NotJudged"/> says why.</param>
/// <param name="Evidence">Retracted ones are shown and not judged.</param>
public sealed record RecordedTightening(
    SourceShown Evidence, Lubrication? Lubrication, SingleUse? SingleUse, IReadOnlyList<PassShown> Passes, JudgedTorque? Judged, NotJudged? NotJudged)
{
    /// <summary>The engines it is said of; absent where the source sets no limit.</summary>
    public BuiltSpan? Built { get; init; }

    public SerialSpan? Serial { get; init; }
}

/// <summary>One pass.</summary>
/// <param name="Torque">N·m; absent where the pass is an angle.</param>
/// <param name="Angle">Degrees of the bolt, from where the pass before ended; absent where the pass is a torque.</param>
public sealed record PassShown(int Pass, string Text, QuantityRange? Torque, QuantityRange? Angle, string? Sequence, string? Note);

/// <summary>What one torque does, in each state that the threads may be in.</summary>
/// <param name="Conditions">As told first, then what is compared: a typed nut factor, dry, oiled, threads as typed.</param>
public sealed record JudgedTorque(
    QuantityRange Torque, IReadOnlyList<TightenedAs> Conditions, IReadOnlyList<Influence> Influences, IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SumWarning> Warnings);

/// <summary>The torque on threads in one state.</summary>
/// <param name="Threads">A code of the lubrications, <c>not-recorded</c>, or <c>given</c> for a typed nut factor.</param>
/// <param name="IsTold">Is it the state that the record or the question tells, not one to compare with?</param>
/// <param name="Preload">N.</param>
/// <param name="ShareOfProof">Of the proof load; 1 is all of it.</param>
/// <param name="ShareOfUltimate">Of the least breaking load.</param>
public sealed record TightenedAs(
    string Threads, bool IsTold, QuantityRange NutFactor, string NutFactorSource, QuantityRange Preload, QuantityRange ShareOfProof,
    QuantityRange ShareOfUltimate, string Text)
{
    /// <summary>Of the proof stress while it is tightened, pull and torsion together.</summary>
    public required QuantityRange ShareWithTorsion { get; init; }

    /// <summary>Is the pull expected to be above the least load that breaks the bolt? Then no bolt pulls so hard: it breaks.</summary>
    public bool Breaks { get; init; }
}
