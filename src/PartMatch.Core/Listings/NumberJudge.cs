using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>What one number of a listing is, against the place a part is needed for.</summary>
/// <param name="claims">Numbers of the base that the page says its goods fit or replace.</param>
internal sealed class NumberJudge(ListingFacts facts, ListingQuestion question, IReadOnlyList<FoundNumber> claims)
{
    private const int MostNearest = 5;

    /// <param name="found">Every place where the number stands; one key.</param>
    /// <param name="where">Those places in words, each once.</param>
    public JudgedNumber Judge(IReadOnlyList<FoundNumber> found, IReadOnlyList<string> where)
    {
        var first = found.OrderBy(one => one.Role).ThenBy(one => one.Read).First();
        var seed = new JudgedNumber(
            first.Written, first.Key, first.Role, first.Read, first.Within, where, NumberVerdict.Unknown, "", null, null, null, null, null, null, null, [], []);
        string[] parts = [.. first.Known.Select(number => number.Part).Distinct(StringComparer.Ordinal)];
        var judged = parts switch
        {
            [] => Unlisted(seed),
            [var one] when first.Known.All(number => number.Identifies) => Part(seed, one),
            _ => Narrowing(seed, parts, first.Known.All(number => number.Identifies)),
        };
        return judged with { Text = judged.Text + HowRead(judged), Needed = first.Known.Any(number => number.Sort == NumberSort.Kit) ? null : Needed(judged.Verdict) };
    }

    // Parts that are chosen by measuring the engine stand there in every grade; of none of them all pieces are needed.
    private int? Needed(NumberVerdict verdict) =>
        verdict is NumberVerdict.RightOne or NumberVerdict.NewerNumber && question.Place is { } place
        && place.Family.FitmentsAt(place.Variant, place.Position).ToList() is [var only] ? only.Quantity : null;

    /// <summary>One part of a kit.</summary>
    public HeldPart Held(ContentsRow row)
    {
        var one = Part(new JudgedNumber(
            row.Part, "", NumberRole.Mentioned, NumberReading.AsWritten, null, [], NumberVerdict.Unknown, "", null, null, null, null, null, null, null, [], []),
            row.Part);
        return new HeldPart(row.Part, one.Name, row.Quantity, row.Certainty, one.Verdict, one.Text);
    }

    private JudgedNumber Unlisted(JudgedNumber seed)
    {
        var near = facts.LookAlikes.Numbers.Find(seed.NumberKey).Where(one => one.Number.Identifies).DistinctBy(one => one.Number.Part).Take(MostNearest).ToList();
        NearestNumber[] nearest = [.. near.Select(one => new NearestNumber(one.Number.Written, one.Number.Part, one.Edits))];
        if (seed.Role == NumberRole.Sold && claims.Count > 0)
        {
            var claimed = string.Join(", ", claims.Select(claim => claim.Known[0].Written).Distinct(StringComparer.Ordinal));
            return seed with
            {
                Verdict = NumberVerdict.ClaimedOnly,
                Nearest = nearest,
                Text = $"No book knows {seed.Written}. That it fits or replaces {claimed} is the seller's word and nothing else.",
            };
        }

        var hint = nearest is [var closest, ..]
            ? $" The nearest known number is {closest.Number}, {closest.Edits} {(closest.Edits == 1 ? "character" : "characters")} away: is it a slip of the pen, or another part?"
            : " No known number is near it.";
        return seed with { Verdict = NumberVerdict.Unknown, Nearest = nearest, Text = $"No book knows {seed.Written}.{hint}" };
    }

    private JudgedNumber Part(JudgedNumber seed, string id)
    {
        var described = facts.LookAlikes.FindPart(id);
        var named = seed with { Part = id, Name = described.Part?.Name, Verdict = NumberVerdict.AnotherKnownPart };
        named = question.Place switch
        {
            null => named with { Text = $"{seed.Written} is {Called(described)}.{Dangers(described, null)}" },
            _ when described.Part is null => named with { Text = $"{seed.Written} stands in a book, but no engine family describes it: nothing can be said of whether it fits." },
            { } place => AtPlace(named, place, described.Part),
        };
        return seed.NumberKey.Length == 0 ? named : Opened(named with { Holds = [.. facts.Contents[id].Select(Held)] });
    }

    // What counts of a set is what it holds: as a thing by itself it sits nowhere.
    private static JudgedNumber Opened(JudgedNumber named)
    {
        var right = named.Holds.Where(held => held.Verdict is NumberVerdict.RightOne or NumberVerdict.NewerNumber).OrderBy(held => held.Certainty == Certainty.Certain ? 0 : 1).ToList();
        return right is not [var first, ..]
            ? named
            : named with
            {
                Fit = null,
                Sureness = null,
                FitLink = null,
                Danger = null,
                DangerText = null,
                Text = $"{named.Written} ({named.Name}) is a set of {named.Holds.Count} parts; "
                    + $"{(first.Certainty == Certainty.Certain ? "among them, certainly," : "perhaps among them")} {first.Text} {(named.Holds.Count > 1 ? "The rest of it is left over unless it is needed elsewhere." : "")}".TrimEnd(),
            };
    }

    private JudgedNumber AtPlace(JudgedNumber named, NeededPlace place, Part part)
    {
        var answer = FitCheck.Decide(place.Family, new FitQuestion(place.Variant, place.Position, part, Built: place.Built, Serial: place.Serial));
        var judged = named with
        {
            Fit = answer.Headline,
            Sureness = answer.Sureness,
            FitLink = new Permalink("/api/fit").With("family", place.Family.Family.Code).With("variant", place.Variant).With("position", place.Position)
                .With("part", part.Id).With("built", place.Built?.Text).With("serial", place.Serial).ToString(),
        };
        var fit = $"{answer.HeadlineText} ({Codes.Of(answer.Sureness)})";
        return answer.Identity.Relation switch
        {
            IdentityRelation.FittedHere => judged with
            {
                Verdict = NumberVerdict.RightOne,
                Text = $"{named.Written} is what the maker fitted as {place.Name}. {fit}.{OnlySome(answer)}{Dangers(facts.LookAlikes.FindPart(part.Id), place)}",
            },
            IdentityRelation.SameBothWays => judged with
            {
                Verdict = NumberVerdict.RightOne,
                Text = $"{named.Written} and what the maker fitted as {place.Name} stand in for each other: {Chain(answer)} {fit}.{OnlySome(answer)}{Dangers(facts.LookAlikes.FindPart(part.Id), place)}",
            },
            IdentityRelation.NewerNumber => judged with { Verdict = NumberVerdict.NewerNumber, Text = $"{named.Written} is the newer number of the part: {Chain(answer)} {fit}.{OnlySome(answer)}" },
            IdentityRelation.OlderNumber => judged with
            {
                Verdict = NumberVerdict.OlderNumber,
                Text = $"{named.Written} is an older number: {Chain(answer)} The maker does not put it in place of the newer. {fit}.",
            },
            _ => Other(judged, place, part, answer, fit),
        };
    }

    private JudgedNumber Other(JudgedNumber judged, NeededPlace place, Part part, FitAnswer answer, string fit)
    {
        var likeness = answer.Identity.Fitted
            .Select(needed => (Needed: needed, Row: LookAlikeSearch.Between(facts.LookAlikes, place.Family.Family.Code, needed, part.Id)))
            .Where(pair => pair.Row is not null).OrderByDescending(pair => pair.Row?.Danger).FirstOrDefault();
        var why = Why(answer);
        if (likeness.Row is { } row && answer.Headline != Headline.Fits)
        {
            var check = row.TellApart.FirstOrDefault(one => one.BeforePaying)?.Text;
            return judged with
            {
                Verdict = NumberVerdict.LookAlike,
                Danger = row.Danger,
                DangerText = row.DangerText,
                Text = $"{judged.Written} is not {NumberOf(likeness.Needed)}, which {place.Name} needs, but can be taken for it: danger {Codes.Of(row.Danger)}. "
                    + $"There: {fit}.{why}{(check is null ? "" : $" Before paying: {check}.")}",
            };
        }

        var elsewhere = part.Kind == place.Family.FindPosition(place.Position)?.Kind ? why : $" It is {Article(part.Name)}, not what sits at that position.";
        return judged with { Verdict = NumberVerdict.AnotherKnownPart, Text = $"{judged.Written} ({part.Name}) as {place.Name}: {fit}.{elsewhere}" };
    }

    private static JudgedNumber Narrowing(JudgedNumber seed, string[] parts, bool identifies)
    {
        var named = string.Join(", ", parts.Select(NumberOf).Order(StringComparer.Ordinal).Take(MostNearest)) + (parts.Length > MostNearest ? $" and {parts.Length - MostNearest} more" : "");
        var what = identifies ? "is a number of several parts" : "is a casting mark or grade that stands on";
        var plural = identifies ? $"{what}: {named}. Whose number is meant?" : parts.Length == 1 ? $"{what} {named}, perhaps on others too." : $"{what} {parts.Length} parts: {named}.";
        return seed with { Verdict = NumberVerdict.NarrowsOnly, Text = $"{seed.Written} {plural} It narrows, and never identifies." };
    }

    private string Dangers(CataloguePart part, NeededPlace? place)
    {
        var warned = part.Part is { } described ? LookAlikeSearch.Warn(facts.LookAlikes, described, place?.Family.Family.Code) : [];
        return warned.Count == 0 ? "" : $" Taken for it: {string.Join("; ", warned.Take(2).Select(one => $"{NumberOf(one.Part)} (danger {one.Danger}{(one.TellApart is null ? "" : $", {one.TellApart}")})"))}.";
    }

    private static string HowRead(JudgedNumber judged) => judged switch
    {
        { Within: { } longer } => $" It stands inside a longer code, {longer}.",
        { Read: NumberReading.LookAlikeCharacters } => $" Written {judged.Written}: read so only by taking look-alike characters for one another, so the number on the part has to be seen.",
        { Read: NumberReading.ForeignLetters } => " Written with foreign letters that look like Latin ones.",
        _ => "",
    };

    private static string OnlySome(FitAnswer answer) => answer.Spans.Count == 0
        ? ""
        : $" It depends on the engine's date or serial number: {string.Join("; ", answer.Spans.Select(span => $"{span.Span}: {FitWording.Of(span.Headline)}"))}.";

    // The unmet reason with the worst consequence: what costs the engine is what the reader has to see.
    private static string Why(FitAnswer answer)
    {
        var reason = answer.Reasons.Where(one => one is { Met: Met.No, By: not ReasonBy.Finding }).OrderByDescending(one => one.Consequence).ThenBy(one => one.By).FirstOrDefault()
            ?? answer.Reasons.FirstOrDefault(one => one.Met == Met.No);
        return reason is null ? "" : $" {reason.Text.TrimEnd('.')}.{Costs(answer.Consequence)}";
    }

    private static string Costs(Consequence? consequence) => consequence switch
    {
        Consequence.Loss => " It costs output.",
        Consequence.Damage => " It can damage the engine.",
        Consequence.Injury => " It can hurt somebody.",
        _ => "",
    };

    private static string Chain(FitAnswer answer) => string.Join(' ', answer.Identity.Chain.Select(link => link.Text.TrimEnd('.') + "."));

    private static string Called(CataloguePart part) => part.Part is { } described ? $"{described.Name} ({described.Maker})" : "in a book, but no engine family describes it";

    private static string NumberOf(string id) => PartId.Find(id)?.Number ?? id;

    private static string Article(string name) => string.Create(CultureInfo.InvariantCulture, $"“{name}”");
}
