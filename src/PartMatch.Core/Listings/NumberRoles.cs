namespace PartMatch.Core.Listings;

/// <summary>
/// What the words around numbers make of them. Words hold for every number behind them in their clause: in "fits A, B; replaces C" A and B
/// are fitted to, C is replaced. A clause ends at a full stop, a semicolon, a question or exclamation mark, the end of a bracket, or an empty
/// line; and at a line break, a dash between blanks, a bar or a bullet, unless the words, or another number, stand right before it and the next number right behind.
/// </summary>
/// <remarks>Words behind a number ("A does not fit the B") make nothing of it. The reaches in words are ours, no source.</remarks>
internal sealed class NumberRoles
{
    private const int FitsNearNot = 3;
    private const int NumberNearNot = 2;
    private const int NumberNearFor = 1;

    private readonly Stack<NumberRole?> _outside = new();
    private NumberRole? _role;
    private CueKind? _last;
    private int _wordsSinceLast;
    private int _wordsSinceNot = int.MaxValue / 2;
    private bool _comma;

    private NumberRoles()
    {
    }

    /// <param name="spans">Of numbers in the text, in its order, none over another.</param>
    /// <returns>One role for each.</returns>
    public static IReadOnlyList<NumberRole> Of(PassageText passage, IReadOnlyList<(int Start, int End)> spans)
    {
        var reading = new NumberRoles();
        var cues = passage.Cues;
        var roles = new NumberRole[spans.Count];
        var (at, cue) = (0, 0);
        for (var number = 0; number < spans.Count; number++)
        {
            var afterNumber = number > 0;
            for (; cue < cues.Count && cues[cue].Start < spans[number].Start; cue++)
            {
                if (cues[cue].Start >= at)
                {
                    reading.ReadGap(passage.Text.AsSpan(at, cues[cue].Start - at), reading._last is not null);
                    reading.ReadCue(cues[cue].Kind);
                    at = cues[cue].End;
                    afterNumber = false;
                }
            }

            reading.ReadGap(passage.Text.AsSpan(at, Math.Max(0, spans[number].Start - at)), afterNumber || reading._last is not null);
            roles[number] = Within(passage.Passage, reading.ReadNumber());
            at = spans[number].End;
        }

        return roles;
    }

    // Outright statements outrank words, but nobody states outright what a thing is not.
    private static NumberRole Within(Passage passage, NumberRole? told) => passage.Stated switch
    {
        _ when told == NumberRole.NotThis => NumberRole.NotThis,
        _ when passage.Place == PassagePlace.Quoted => NumberRole.Mentioned,
        NumberProperty.Fits => NumberRole.Fits,
        NumberProperty.Replaces => NumberRole.Replaces,
        NumberProperty.Sku => NumberRole.SellersOwn,
        NumberProperty.Gtin => NumberRole.Mentioned,
        not null => told ?? NumberRole.Sold,
        null => told ?? (passage.Place is PassagePlace.Title or PassagePlace.Heading ? NumberRole.Sold : NumberRole.Mentioned),
    };

    private void ReadCue(CueKind kind)
    {
        var near = _wordsSinceLast <= 1 && !_comma ? _last : null;
        var denied = _wordsSinceNot <= FitsNearNot;
        switch (kind)
        {
            case CueKind.Fits or CueKind.Replaces:
                _role = denied ? NumberRole.NotThis : kind == CueKind.Fits ? NumberRole.Fits : NumberRole.Replaces;
                break;
            case CueKind.For when denied:
                _role = NumberRole.NotThis;
                break;
            case CueKind.Not when near is CueKind.Fits or CueKind.Replaces:
                _role = NumberRole.NotThis;
                break;
            case CueKind.Not:
                _wordsSinceNot = -1;
                break;
            case CueKind.Sold when near == CueKind.For:
                _role = NumberRole.Fits;
                break;
            case CueKind.Sold when near is not (CueKind.Fits or CueKind.Replaces or CueKind.Mentions or CueKind.Not or CueKind.SellersOwn):
                _role = NumberRole.Sold;
                break;
            case CueKind.SellersOwn:
                _role = NumberRole.SellersOwn;
                break;
            case CueKind.Mentions or CueKind.OtherNumber:
                _role = NumberRole.Mentioned;
                break;
            case CueKind.But:
                _role = _role == NumberRole.NotThis ? NumberRole.Mentioned : _role;
                _wordsSinceNot = int.MaxValue / 2;
                break;
            default:
                break;
        }

        (_last, _wordsSinceLast, _comma) = (kind, 0, false);
        _wordsSinceNot += _wordsSinceNot < 0 ? 1 : kind == CueKind.Not ? 0 : 1;
    }

    private NumberRole? ReadNumber()
    {
        if (_wordsSinceNot <= NumberNearNot && !_comma)
        {
            _role = NumberRole.NotThis;
        }
        else if (_last == CueKind.For && _wordsSinceLast <= NumberNearFor && !_comma)
        {
            _role ??= NumberRole.Fits;
        }
        else if (_last == CueKind.Is && _wordsSinceLast == 0 && !_comma)
        {
            _role = _role is null or NumberRole.NotThis ? NumberRole.Sold : _role;
        }

        (_last, _wordsSinceLast, _wordsSinceNot) = (null, 0, int.MaxValue / 2);
        return _role;
    }

    private void ReadGap(ReadOnlySpan<char> gap, bool holdsOver)
    {
        var weakBoundary = false;
        var words = 0;
        for (var at = 0; at < gap.Length; at++)
        {
            var letter = gap[at];
            if (char.IsLetterOrDigit(letter))
            {
                words += at == 0 || !char.IsLetterOrDigit(gap[at - 1]) ? 1 : 0;
                continue;
            }

            weakBoundary |= IsWeakBoundary(gap, at);
            _comma |= letter == ',';
            if (IsBoundary(gap, at, words + _wordsSinceLast, _last))
            {
                Forget();
                (words, weakBoundary) = (0, false);
            }
            else if (letter is '(' or '[' && _outside.Count < 8)
            {
                _outside.Push(_role);
            }
            else if (letter is ')' or ']' && _outside.TryPop(out var outside))
            {
                Forget();
                _role = outside;
                words = 0;
            }
        }

        if (weakBoundary && !(holdsOver && words == 0))
        {
            Forget();
        }

        _wordsSinceLast += words;
        _wordsSinceNot += words;
    }

    private void Forget() => (_role, _last, _wordsSinceLast, _wordsSinceNot, _comma) = (null, null, 0, int.MaxValue / 2, false);

    // A dot behind the words themselves, or before more letters, is an abbreviation's or a decimal's.
    private static bool IsBoundary(ReadOnlySpan<char> gap, int at, int words, CueKind? last) => gap[at] switch
    {
        ';' or '!' or '?' => true,
        '.' => (words > 0 || last is null) && (at + 1 == gap.Length || char.IsWhiteSpace(gap[at + 1])),
        '\n' => gap[..at].TrimEnd(" \t\r").EndsWith("\n"),
        _ => false,
    };

    private static bool IsWeakBoundary(ReadOnlySpan<char> gap, int at) => gap[at] switch
    {
        '\n' or '|' or '\u2022' or '\u00B7' => true,
        '-' or '\u2013' or '\u2014' => at > 0 && at + 1 < gap.Length && char.IsWhiteSpace(gap[at - 1]) && char.IsWhiteSpace(gap[at + 1]),
        _ => false,
    };
}
