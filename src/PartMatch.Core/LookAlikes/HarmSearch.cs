using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>The place where a mix-up does most harm.</summary>
/// <param name="Part">The part that is put there in place of the right one; null when the asked number is in no book.</param>
/// <param name="Built">A build date of the span for which the right part is fitted there; null when the span has no bound.</param>
/// <param name="Serial">A serial number of that span, likewise.</param>
public sealed record WorstPlace(
    string Family, string Variant, string Position, string? Part, string? Built, long? Serial, Headline Headline, Consequence? Consequence, Sureness Sureness);

/// <summary>How bad it is to take one part for the other, judged by <see cref="FitCheck"/> at every place where either is fitted.</summary>
internal static class HarmSearch
{
    /// <summary>The largest harm, 0 to 5, and the first place that shows it: places of the other part first, then by family, variant and position.</summary>
    /// <param name="family">The context, or null for every family.</param>
    /// <returns>No place where there is no harm, and none where neither part is fitted anywhere: then the harm is that of "not known".</returns>
    public static (int Harm, WorstPlace? Worst) Between(LookAlikeFacts facts, string? family, CataloguePart asked, CataloguePart other)
    {
        if (asked.Id is not null && asked.Id == other.Id)
        {
            return (0, null);
        }

        var (harm, worst) = (-1, (WorstPlace?)null);
        foreach (var (place, question, wrong) in Questions(facts, family, other, asked).Concat(Questions(facts, family, asked, other)))
        {
            var (headline, consequence, sureness, isUnset) = Judge(facts, place, question);
            var here = isUnset ? Danger.HarmUnset(headline, consequence) : Danger.Harm(headline, consequence);
            if (here > harm)
            {
                harm = here;
                worst = new WorstPlace(
                    place.Family.Family.Code, question.Variant, question.Position, wrong.Id, question.Built?.Text, question.Serial, headline, consequence, sureness);
            }

            if (harm == Danger.WorstHarm)
            {
                break;
            }
        }

        return worst is null ? (Danger.NotKnownHarm, null) : (harm, harm == 0 ? null : worst);
    }

    // A part of another kind does not fit, whatever else is recorded of it. Only a supersession, a finding, or a companion rule that has a consequence of its own, can say more.
    private static (Headline Headline, Consequence? Consequence, Sureness Sureness, bool IsUnset) Judge(LookAlikeFacts facts, FittedPlace place, FitQuestion question)
    {
        if (question.Part is { } wrong && place.Family.FindPosition(question.Position)?.Kind is { } kind && wrong.Kind != kind
            && !facts.Supersessions.Any(link => link.OldPart == wrong.Id || link.NewPart == wrong.Id)
            && !place.Family.FindingsAt(question.Position).Any(finding => finding.Part == wrong.Id)
            && !place.Family.Companions.Any(rule => rule.When.At.Position == question.Position || rule.Then.At.Position == question.Position))
        {
            return (Headline.DoesNotFit, null, Sureness.Indicated, false);
        }

        var answer = FitCheck.Decide(place.Family, question);
        Reason[] unset = [.. answer.Reasons.Where(reason => reason.OnceDone is not null)];
        return (answer.Headline, unset.Select(reason => reason.Consequence).Append(answer.Consequence).Max(), answer.Sureness, unset.Length > 0);
    }

    // Where the right part is fitted on some engines only, the question is put for the engines at the bounds of that span: on the others it is not the right one.
    private static IEnumerable<(FittedPlace Place, FitQuestion Question, CataloguePart Wrong)> Questions(
        LookAlikeFacts facts, string? family, CataloguePart right, CataloguePart wrong)
    {
        foreach (var place in right.Id is null ? [] : facts.PlacesOf(right.Id, family))
        {
            var span = place.Fitment.Span;
            var plain = new FitQuestion(place.Fitment.Variant, place.Fitment.Position, wrong.Part);
            var first = plain with { Built = span.BuiltFrom ?? span.BuiltTo, Serial = span.SerialFrom ?? span.SerialTo };
            var last = plain with { Built = span.BuiltTo ?? span.BuiltFrom, Serial = span.SerialTo ?? span.SerialFrom };
            yield return (place, first, wrong);
            if (first != last)
            {
                yield return (place, last, wrong);
            }
        }
    }
}
