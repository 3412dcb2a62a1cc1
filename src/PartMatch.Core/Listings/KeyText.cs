using System.Text;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>A text as the characters of number keys, each with the place in the text that it comes from.</summary>
/// <remarks>
/// <see cref="NumberKey"/> of the whole text, but for marks that would have to change places before they join, and for Hangul in single
/// letters: no number is written with them.
/// </remarks>
internal sealed class KeyText
{
    private char[] _key;
    private int[] _start;
    private int[] _end;
    private KeyGap[] _before;
    private readonly int[] _nextDigit;
    private readonly int[] _chunkEnd;
    private KeyGap _gap = KeyGap.Glued;

    public KeyText(string text)
    {
        Text = text;
        _key = new char[text.Length];
        _start = new int[text.Length];
        _end = new int[text.Length];
        _before = new KeyGap[text.Length];
        for (var at = 0; at < text.Length;)
        {
            at = Read(at);
        }

        Folded = new char[Length];
        _nextDigit = new int[Length + 1];
        _chunkEnd = new int[Length + 1];
        (_nextDigit[Length], _chunkEnd[Length]) = (Length, Length);
        for (var index = Length - 1; index >= 0; index--)
        {
            Folded[index] = FoldingClasses.Fold(_key[index]);
            _nextDigit[index] = IsDigit(index) ? index : _nextDigit[index + 1];
            _chunkEnd[index] = index + 1 < Length && _before[index + 1] <= KeyGap.Tied ? _chunkEnd[index + 1] : index + 1;
        }
    }

    public string Text { get; }

    /// <summary>Key characters.</summary>
    public int Length { get; private set; }

    public ReadOnlySpan<char> Key => _key.AsSpan(0, Length);

    /// <summary>The key characters, each read as the digit of its look-alike class.</summary>
    public char[] Folded { get; }

    /// <summary>What stands before a key character.</summary>
    public ReadOnlySpan<KeyGap> Before => _before.AsSpan(0, Length);

    /// <summary>Of a key character, in the text.</summary>
    public int Start(int index) => _start[index];

    /// <summary>Behind a key character, in the text.</summary>
    public int End(int index) => _end[index];

    /// <summary>What parts a key character from the one before it; nothing where one character of the text gave both, as "½" does.</summary>
    public ReadOnlySpan<char> GapBefore(int index) => _start[index] > _end[index - 1] ? Text.AsSpan(_end[index - 1], _start[index] - _end[index - 1]) : [];

    /// <summary>As it stands in the text, from one key character up to, not with, another.</summary>
    public string Written(int from, int to) => Text[_start[from].._end[to - 1]];

    /// <summary>Does a digit stand from one key character up to, not with, another?</summary>
    public bool HasDigit(int from, int to) => _nextDigit[from] < to;

    public int CountDigits(int from, int to)
    {
        var count = 0;
        foreach (var letter in Key[from..to])
        {
            count += char.IsAsciiDigit(letter) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Behind the last key character that no white space parts from this one.</summary>
    public int ChunkEnd(int index) => _chunkEnd[index];

    public bool IsDigit(int index) => char.IsAsciiDigit(_key[index]);

    /// <summary>A letter or a digit, so no sign that stays in keys, such as a comma or a bracket.</summary>
    public bool IsWord(int index) => char.IsLetterOrDigit(_key[index]) || char.IsSurrogate(_key[index]);

    /// <summary>Do two neighbours stand glued together, both letters or digits?</summary>
    public bool IsGlued(int index) => index > 0 && index < Length && _before[index] == KeyGap.Glued && IsWord(index - 1) && IsWord(index);

    /// <summary>Would a cut here go through a run of digits?</summary>
    public bool CutsDigits(int index) => IsGlued(index) && IsDigit(index - 1) && IsDigit(index);

    /// <summary>Would a cut here go through a run of letters?</summary>
    public bool CutsLetters(int index) => IsGlued(index) && !IsDigit(index - 1) && !IsDigit(index);

    /// <summary>Does white space stand between two of these key characters?</summary>
    public bool HasBlank(int from, int to) => _chunkEnd[from] < to;

    /// <summary>Does no letter or digit touch it, not even over a dash, dot or slash?</summary>
    public bool StandsAlone(int from, int to) => IsFree(from) && IsFree(to);

    /// <summary>Is a Latin letter or digit written with a character outside ASCII?</summary>
    public bool IsForeign(int index) => char.IsAscii(_key[index]) && !char.IsAscii(Text[_start[index]]);

    // "1,750" and "10:30" are one amount, although the sign in the middle belongs to no number.
    private bool IsFree(int cut) =>
        cut == 0 || cut == Length || _before[cut] >= KeyGap.Blank
        || (!(IsWord(cut - 1) && IsWord(cut)) && !IsInAmount(cut - 1) && !IsInAmount(cut));

    private bool IsInAmount(int sign) =>
        sign > 0 && sign + 1 < Length && (_key[sign] is ',' or ':') && IsDigit(sign - 1) && IsDigit(sign + 1)
        && _before[sign] == KeyGap.Glued && _before[sign + 1] == KeyGap.Glued;

    private int Read(int at)
    {
        var letter = Text[at];
        if (KeyCharacters.IsSingle(letter, out var key))
        {
            Add(key, at, at + 1);
            return at + 1;
        }

        if (KeyCharacters.IsSeparator(letter))
        {
            _gap = Stronger(_gap, KeyCharacters.GapOf(letter));
            return at + 1;
        }

        Rune.DecodeFromUtf16(Text.AsSpan(at), out var rune, out var used);
        if (KeyCharacters.IsMark(rune) && Length > 0)
        {
            Join(rune, at + used);
        }
        else
        {
            AddAll(rune.ToString(), at, at + used);
        }

        return at + used;
    }

    private void AddAll(string letters, int start, int end)
    {
        foreach (var letter in letters.Normalize(NormalizationForm.FormKC).ToUpperInvariant())
        {
            if (NumberKey.IsSeparator(letter))
            {
                _gap = Stronger(_gap, KeyCharacters.GapOf(letter));
            }
            else
            {
                Add(NumberKey.ReadAsLatin(letter), start, end);
            }
        }
    }

    // A mark joins the letter before it, even where a separator stands between them: that is what a key makes of it.
    private void Join(Rune mark, int end)
    {
        var last = Length - 1;
        var joined = char.IsSurrogate(_key[last]) ? "" : (_key[last] + mark.ToString()).Normalize(NormalizationForm.FormKC);
        if (joined.Length == 1)
        {
            _key[last] = joined[0];
            _end[last] = end;
            _gap = KeyGap.Glued;
        }
        else
        {
            AddAll(mark.ToString(), end - mark.Utf16SequenceLength, end);
        }
    }

    private void Add(char key, int start, int end)
    {
        if (Length == _key.Length)
        {
            var larger = Math.Max(8, Length * 2);
            Array.Resize(ref _key, larger);
            Array.Resize(ref _start, larger);
            Array.Resize(ref _end, larger);
            Array.Resize(ref _before, larger);
        }

        (_key[Length], _start[Length], _end[Length], _before[Length]) = (key, start, end, _gap);
        Length++;
        _gap = KeyGap.Glued;
    }

    private static KeyGap Stronger(KeyGap one, KeyGap other) => one > other ? one : other;
}
