namespace PartMatch.Core.Listings;

/// <summary>A passage with what is read of its text before numbers are looked for.</summary>
internal sealed class PassageText(Passage passage, int index)
{
    private IReadOnlyList<Cue>? _cues;

    public Passage Passage { get; } = passage;

    /// <summary>Of the passage in the listing.</summary>
    public int Index { get; } = index;

    public string Text => Passage.Text;

    public KeyText Keys { get; } = new(passage.Text);

    /// <summary>
    /// The words that make something of a number, in the order of the text; looked for when first asked for, since most passages hold no number.
    ///</summary>
    public IReadOnlyList<Cue> Cues => _cues ??= RoleWords.In(Passage.Text);

    public bool IsTitle => Passage.Place is PassagePlace.Title or PassagePlace.Heading;

    /// <summary>Is it said outright that a number stands here: by the property, or by words such as "part no" shortly before?</summary>
    public bool IsToldAt(int start) =>
        Passage.Stated is not null
        || (FindCueBefore(start) is { Kind: CueKind.Sold or CueKind.SellersOwn } cue && IsSameClause(cue.End, start));

    /// <summary>The last of them that ends before a place of the text; null where there is none.</summary>
    public Cue? FindCueBefore(int start)
    {
        var (low, high) = (0, Cues.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Cues[middle].End <= start ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? null : Cues[low - 1];
    }

    // Ours, no source: a list of two or three short numbers after the words still counts as told.
    private bool IsSameClause(int from, int to) => to - from <= 30 && Passage.Text.AsSpan(from, to - from).IndexOfAny(";!?\n") < 0;
}
