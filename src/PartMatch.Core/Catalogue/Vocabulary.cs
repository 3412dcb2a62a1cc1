namespace PartMatch.Core.Catalogue;

/// <summary>What an unmet relation means: the part does not go on, goes on after a named work, or goes on and changes how the engine runs.</summary>
public enum Effect
{
    Stops,
    Work,
    Alters,
}

/// <summary>How two values are compared.</summary>
public enum Relation
{
    Same,
    AtLeast,
    AtMost,
    OneOf,
    Covers,

    /// <summary>Joints only: right minus left lies in a band.</summary>
    Band,
}

/// <summary>How bad an unmet relation is, mildest first.</summary>
public enum Consequence
{
    Nuisance,
    Loss,
    Damage,
    Injury,
}

public enum FeatureType
{
    Quantity,
    Count,
    Choice,
    Choices,
    Curve,
}

/// <summary>A way to observe a feature. Photo and label work before paying; the others need the part in hand.</summary>
public enum Method
{
    Photo,
    Label,
    Eye,
    Count,
    SteelRule,
    Caliper,
    Gauge,
    Scale,
    Meter,
    Bench,
}

/// <summary>What kind of source a piece of evidence is.</summary>
public enum EvidenceGrade
{
    Inferred,
    Reported,
    Measured,
    MakersDocument,
    TrialFitted,
    RanUnderLoad,
}

/// <summary>What a number on or for a part is. A casting mark may stand on several parts: it narrows, never identifies.</summary>
public enum NumberSort
{
    Service,
    CastingMark,
    Grade,
    Supplier,
    Kit,
    Aftermarket,
}

/// <summary>May the old part stand in for the new one as well?</summary>
public enum SupersessionWay
{
    One,
    Both,
}

public enum BookKind
{
    Common,
    Family,
}

/// <summary>The two questions of every fit: does it go on, and does the engine then run the same?</summary>
public enum Axis
{
    Mounts,
    Runs,
}

/// <summary>What was found. Yes, with work and no are of <see cref="Axis.Mounts"/>; same and differently are of <see cref="Axis.Runs"/>.</summary>
public enum FindingOutcome
{
    Yes,
    WithWork,
    No,
    Same,
    Differently,
}

/// <summary>Does a source speak of every part of the number, or of the one example it looked at?</summary>
public enum SpeaksOf
{
    Number,
    Item,
}

/// <summary>Where an item comes from.</summary>
public enum ItemOrigin
{
    Donor,
    YardPull,
    Arrival,
    BenchStock,
}
