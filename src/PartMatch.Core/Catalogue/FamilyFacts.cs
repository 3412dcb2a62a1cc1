using System.Collections.Frozen;

namespace PartMatch.Core.Catalogue;

/// <summary>Everything the base holds about one family, with what its books share: the facts a decider reasons over. Immutable.</summary>
/// <remarks>Lists are in ordinal order of their keys, whatever order they were handed over in. Parts are all parts in the scope of the family's book; a part of another family is passed beside it.</remarks>
public sealed class FamilyFacts
{
    private readonly FrozenDictionary<string, Variant> _variants;
    private readonly FrozenDictionary<string, Position> _positions;
    private readonly FrozenDictionary<string, Kind> _kinds;
    private readonly FrozenDictionary<string, Part> _parts;
    private readonly FrozenDictionary<string, Work> _works;
    private readonly ILookup<(string Variant, string Position), Fitment> _fitments;
    private readonly ILookup<string, Joint> _jointsAt;
    private readonly ILookup<string, Stack> _stacksAt;
    private readonly ILookup<string, Part> _partsOfKind;
    private readonly ILookup<string, Finding> _findingsAt = Array.Empty<Finding>().ToLookup(finding => finding.Position);
    private readonly ILookup<(string Variant, string Position), TorquePass> _torquesAt = Array.Empty<TorquePass>().ToLookup(pass => (pass.Variant, pass.Position));

    public required Family Family { get; init; }

    public IReadOnlyList<Variant> Variants { get; }

    public IReadOnlyList<Position> Positions { get; }

    public IReadOnlyList<Fitment> Fitments { get; }

    public IReadOnlyList<Need> Needs
    {
        get;
        init => field =
        [
            .. value.OrderBy(need => need.Variant, StringComparer.Ordinal).ThenBy(need => need.Position, StringComparer.Ordinal)
                .ThenBy(need => need.Feature, StringComparer.Ordinal).ThenBy(need => need.Effect),
        ];
    } = [];

    public IReadOnlyList<Joint> Joints { get; }

    public IReadOnlyList<Stack> Stacks { get; }

    public IReadOnlyList<Companion> Companions
    {
        get;
        init => field = [.. value.OrderBy(companion => companion.Code, StringComparer.Ordinal)];
    } = [];

    public IReadOnlyList<Supersession> Supersessions
    {
        get;
        init => field = [.. value.OrderBy(link => link.OldPart, StringComparer.Ordinal).ThenBy(link => link.NewPart, StringComparer.Ordinal)];
    } = [];

    /// <summary>What the books in the scope of the family say of pairs of parts; several books may judge one pair.</summary>
    public IReadOnlyList<JudgedPair> Pairs
    {
        get;
        init => field = [.. value.OrderBy(pair => pair.PartA, StringComparer.Ordinal).ThenBy(pair => pair.PartB, StringComparer.Ordinal)];
    } = [];

    public IReadOnlyList<SelectRow> Selects
    {
        get;
        init => field = [.. value.OrderBy(row => row.Position, StringComparer.Ordinal).ThenBy(row => row.From).ThenBy(row => row.Part, StringComparer.Ordinal)];
    } = [];

    public IReadOnlyList<EngineFact> EngineFacts { get; init; } = [];

    /// <summary>Retracted ones included: they stay visible.</summary>
    public IReadOnlyList<Finding> Findings
    {
        get;
        init
        {
            field = [.. value.OrderBy(finding => finding.Code, StringComparer.Ordinal)];
            _findingsAt = field.ToLookup(finding => finding.Position, StringComparer.Ordinal);
        }
    } = [];

    /// <summary>How fasteners are tightened; retracted ones included.</summary>
    public IReadOnlyList<TorquePass> Torques
    {
        get;
        init
        {
            field =
            [
                .. value.OrderBy(pass => pass.Variant, StringComparer.Ordinal).ThenBy(pass => pass.Position, StringComparer.Ordinal)
                    .ThenBy(pass => pass.Evidence.Code, StringComparer.Ordinal).ThenBy(pass => pass.Pass),
            ];
            _torquesAt = field.ToLookup(pass => (pass.Variant, pass.Position));
        }
    } = [];

    /// <summary>What has to be off before what; retracted ones included.</summary>
    public IReadOnlyList<Opening> Openings
    {
        get;
        init => field =
        [
            .. value.OrderBy(opening => opening.Position, StringComparer.Ordinal).ThenBy(opening => opening.OffFirst, StringComparer.Ordinal)
                .ThenBy(opening => string.Join('|', opening.Variants), StringComparer.Ordinal),
        ];
    } = [];

    /// <summary>What goes in first where both are put in; retracted ones included.</summary>
    public IReadOnlyList<BenchOrder> BenchOrders
    {
        get;
        init => field =
        [
            .. value.OrderBy(row => row.First, StringComparer.Ordinal).ThenBy(row => row.Then, StringComparer.Ordinal)
                .ThenBy(row => string.Join('|', row.Variants), StringComparer.Ordinal),
        ];
    } = [];

    /// <summary>What is minded at parts of every kind in scope; several books may remind of one kind; retracted ones included.</summary>
    public IReadOnlyList<Reminder> Reminders
    {
        get;
        init => field =
        [
            .. value.OrderBy(row => row.Kind, StringComparer.Ordinal).ThenBy(row => row.Code, StringComparer.Ordinal).ThenBy(row => row.Text, StringComparer.Ordinal),
        ];
    } = [];

    /// <summary>What is renewed when something is disturbed; retracted ones included.</summary>
    public IReadOnlyList<Renewal> Renewals
    {
        get;
        init => field =
        [
            .. value.OrderBy(renewal => renewal.Opened, StringComparer.Ordinal).ThenBy(renewal => renewal.Renewed, StringComparer.Ordinal)
                .ThenBy(renewal => string.Join('|', renewal.Variants), StringComparer.Ordinal),
        ];
    } = [];

    /// <summary>What is known to be weak; retracted ones included.</summary>
    public IReadOnlyList<WeakPoint> WeakPoints
    {
        get;
        init => field = [.. value.OrderBy(weak => weak.Code, StringComparer.Ordinal)];
    } = [];

    /// <summary>Service limits of every kind in scope; several books may limit one feature.</summary>
    public IReadOnlyList<ServiceLimit> Limits
    {
        get;
        init => field =
        [
            .. value.OrderBy(limit => limit.Kind, StringComparer.Ordinal).ThenBy(limit => limit.Feature, StringComparer.Ordinal)
                .ThenBy(limit => limit.Part, StringComparer.Ordinal).ThenBy(limit => limit.Evidence?.Code, StringComparer.Ordinal),
        ];
    } = [];

    public FamilyFacts(
        IReadOnlyList<Variant> variants,
        IReadOnlyList<Position> positions,
        IReadOnlyList<Kind> kinds,
        IReadOnlyList<Part> parts,
        IReadOnlyList<Work> works,
        IReadOnlyList<Fitment> fitments,
        IReadOnlyList<Joint> joints,
        IReadOnlyList<Stack> stacks)
    {
        Variants = [.. variants.OrderBy(variant => variant.Code, StringComparer.Ordinal)];
        Positions = [.. positions.OrderBy(position => position.Code, StringComparer.Ordinal)];
        Fitments =
        [
            .. fitments.OrderBy(fitment => fitment.Variant, StringComparer.Ordinal).ThenBy(fitment => fitment.Position, StringComparer.Ordinal)
                .ThenBy(fitment => fitment.Part ?? Part.None, StringComparer.Ordinal)
                .ThenBy(fitment => fitment.Span.BuiltFrom?.First).ThenBy(fitment => fitment.Span.BuiltTo?.Last)
                .ThenBy(fitment => fitment.Span.SerialFrom).ThenBy(fitment => fitment.Span.SerialTo),
        ];
        Works = [.. works.OrderBy(work => work.Code, StringComparer.Ordinal)];
        Joints = [.. joints.OrderBy(joint => joint.Code, StringComparer.Ordinal)];
        Stacks = [.. stacks.OrderBy(stack => stack.Code, StringComparer.Ordinal)];
        _variants = variants.ToFrozenDictionary(variant => variant.Code, StringComparer.Ordinal);
        _positions = positions.ToFrozenDictionary(position => position.Code, StringComparer.Ordinal);
        _kinds = kinds.ToFrozenDictionary(kind => kind.Code, StringComparer.Ordinal);
        _parts = parts.ToFrozenDictionary(part => part.Id, StringComparer.Ordinal);
        _works = works.ToFrozenDictionary(work => work.Code, StringComparer.Ordinal);
        _fitments = Fitments.ToLookup(fitment => (fitment.Variant, fitment.Position));
        _jointsAt = Joints.SelectMany(joint => new[] { joint.Left.Position, joint.Right.Position }.Distinct(), (joint, position) => (joint, position))
            .ToLookup(pair => pair.position, pair => pair.joint, StringComparer.Ordinal);
        _stacksAt = Stacks.SelectMany(stack => stack.Terms.OfType<FeatureTerm>().Select(term => term.At.Position).Distinct(), (stack, position) => (stack, position))
            .ToLookup(pair => pair.position, pair => pair.stack, StringComparer.Ordinal);
        Parts = [.. parts.OrderBy(part => part.Id, StringComparer.Ordinal)];
        _partsOfKind = Parts.ToLookup(part => part.Kind, StringComparer.Ordinal);
    }

    public Variant? FindVariant(string code) => _variants.GetValueOrDefault(code);

    public Position? FindPosition(string code) => _positions.GetValueOrDefault(code);

    public Kind GetKind(string code) => _kinds[code];

    public Kind? FindKind(string code) => _kinds.GetValueOrDefault(code);

    public Part GetPart(string id) => _parts[id];

    public Part? FindPart(string id) => _parts.GetValueOrDefault(id);

    /// <summary>Every work in scope, in ordinal order of its code.</summary>
    public IReadOnlyList<Work> Works { get; }

    public Work? FindWork(string code) => _works.GetValueOrDefault(code);

    /// <summary>What the maker fitted there, every span; empty when not recorded. A row of retracted evidence counts as not recorded.</summary>
    public IEnumerable<Fitment> FitmentsAt(string variant, string position) =>
        _fitments[(variant, position)].Where(fitment => fitment.Evidence?.IsRetracted != true);

    /// <summary>The joints that have this position on one side.</summary>
    public IEnumerable<Joint> JointsAt(string position) => _jointsAt[position];

    public IEnumerable<Stack> StacksAt(string position) => _stacksAt[position];

    /// <summary>Every finding about this position, of any part and variant, ordered by code.</summary>
    public IEnumerable<Finding> FindingsAt(string position) => _findingsAt[position];

    /// <summary>How the fastener there is tightened, ordered by evidence, then pass; retracted ones included.</summary>
    public IEnumerable<TorquePass> TorquesAt(string variant, string position) => _torquesAt[(variant, position)];

    /// <summary>Every part in scope, in ordinal order.</summary>
    public IReadOnlyList<Part> Parts { get; }

    public IEnumerable<Part> PartsOfKind(string kind) => _partsOfKind[kind];
}
