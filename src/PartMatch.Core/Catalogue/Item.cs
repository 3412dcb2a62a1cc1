namespace PartMatch.Core.Catalogue;

/// <summary>One physical example of a part. What is measured on it says nothing about other examples and never changes its part.</summary>
/// <param name="Part">The part it is claimed to be; null where nobody knows.</param>
/// <param name="Condition">In words, as found.</param>
/// <param name="Readings">Ordered by feature.</param>
/// <param name="WorksDone">Ordered by work.</param>
public sealed record Item(
    string Code,
    string Book,
    string? Part,
    ItemOrigin? Origin,
    string? Condition,
    Evidence? Evidence,
    string? Note,
    IReadOnlyList<ItemReading> Readings,
    IReadOnlyList<WorkDone> WorksDone)
{
    /// <summary><c>book/item</c>: codes repeat between books.</summary>
    public string Address => $"{Book}/{Code}";

    /// <summary>The source of a reading: its own, else that of the item; null where neither is recorded.</summary>
    public Evidence? SourceOf(ItemReading reading) => reading.Evidence ?? Evidence;

    /// <summary>A reading whose source was withdrawn is shown and does not count.</summary>
    public bool Counts(ItemReading reading) => SourceOf(reading)?.IsRetracted != true;

    /// <summary>A reading is a measurement, unless its source only tells or concludes it: then it stands as that.</summary>
    public EvidenceGrade GradeOf(ItemReading reading) =>
        SourceOf(reading)?.Grade is { } grade and (EvidenceGrade.Reported or EvidenceGrade.Inferred) ? grade : EvidenceGrade.Measured;
}

/// <summary>What was read on the item.</summary>
/// <param name="Reading">A quantity has no minus and no plus here: the maker's spread belongs to the number, not to the example.</param>
/// <param name="ReadOn">The day, as written.</param>
/// <param name="Evidence">Its own source; null where that of the item speaks for it.</param>
public sealed record ItemReading(string Feature, Reading Reading, string? Instrument, string? ReadOn, Evidence? Evidence, string? Note);

/// <summary>A work that was done to the item.</summary>
/// <param name="DoneOn">The day, as written.</param>
public sealed record WorkDone(string Work, string? DoneOn, string? Note);

/// <summary>How worn a part may be.</summary>
/// <param name="Part">The one part it holds for; null for the whole kind.</param>
/// <param name="Band">Readings within it pass; base units, an empty end is open.</param>
/// <param name="Unit">The unit the band was written in, or null for counts.</param>
/// <param name="Consequence">Of using a part beyond it.</param>
public sealed record ServiceLimit(
    string Kind, string Feature, string? Part, Measures.Interval Band, Measures.Unit? Unit, Consequence Consequence, Evidence? Evidence, string? Note);
