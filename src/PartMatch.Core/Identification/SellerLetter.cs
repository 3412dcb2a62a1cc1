using System.Globalization;
using System.Text;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Identification;

/// <summary>The message that gets out of a seller what separates the candidates, without saying which answer is hoped for.</summary>
internal static class SellerLetter
{
    /// <returns>Null where no photo or label separates any two.</returns>
    public static SellerMessage? Write(IdentificationSubject subject, Observable[] splitting, IReadOnlyList<(int One, int Other)> pairs)
    {
        KeyTest[] tests = [.. splitting.Select(one => one.AsTest())];
        Observable[] chosen = [.. LeastTests.Separating(tests, pairs).Select(test => splitting[test])];
        if (chosen.Length == 0)
        {
            return null;
        }

        var shots = ShotsFor(chosen);
        SellerQuestion[] questions = [.. chosen.Select(one => Question(subject, one, pairs))];
        return new SellerMessage(Letter(subject, chosen, shots), questions, [.. shots.Select(shot => shot.Asked)]);
    }

    private sealed record ChosenShot(AskedShot Asked, IReadOnlyList<Observable> Shows, Position? Position);

    private static SellerQuestion Question(IdentificationSubject subject, Observable one, IReadOnlyList<(int One, int Other)> pairs)
    {
        var test = one.AsTest();
        return new SellerQuestion(
            one.Address, one.Name, one.Check.Method, Ask(one),
            [.. pairs.Where(pair => test.Separates(pair.One, pair.Other)).Select(pair => (IReadOnlyList<string>)[subject.Candidates[pair.One].Code, subject.Candidates[pair.Other].Code])]);
    }

    // The standard photographs of the kind that show what is asked; a feature that none of them shows gets a photograph of its own.
    private static List<ChosenShot> ShotsFor(Observable[] chosen)
    {
        var shots = new List<ChosenShot>();
        foreach (var place in chosen.Where(one => one.Feature.Code != Feature.Present.Code).GroupBy(one => (one.Position?.Code, one.Kind?.Code)))
        {
            List<Observable> open = [.. place];
            var (kind, position) = (open[0].Kind, open[0].Position);
            while (open.Count > 0)
            {
                var shot = kind?.Shots.Where(shot => open.Exists(one => shot.Shows.Contains(one.Feature.Code)))
                    .OrderByDescending(shot => open.Count(one => shot.Shows.Contains(one.Feature.Code))).ThenBy(shot => shot.Code, StringComparer.Ordinal).FirstOrDefault();
                if (shot is null)
                {
                    break;
                }

                shots.Add(new ChosenShot(
                    new AskedShot(kind!.Code, shot.Code, shot.Name, shot.How), open.FindAll(one => shot.Shows.Contains(one.Feature.Code)), position)); // a shot comes from a kind
                open.RemoveAll(one => shot.Shows.Contains(one.Feature.Code));
            }
        }

        return shots;
    }

    private static string Letter(IdentificationSubject subject, Observable[] chosen, List<ChosenShot> shots)
    {
        var isEngine = subject.Candidates[0].Part is null;
        var text = new StringBuilder("Hello,\n\n");
        text.Append(CultureInfo.InvariantCulture, $"I am interested in the {What(subject)} you offer. ");
        text.Append(isEngine ? "There are several versions of it, so before I buy I have to know which one it is. Could you please send me:\n\n" : "It is easily confused with others, so before I buy I have to know which one it is. Could you please send me:\n\n");
        string[] asked =
        [
            .. shots.Select(shot => $"A photo of the {Place(shot.Position)}{LowerFirst(shot.Asked.Name)}, so that one can see: {string.Join("; ", shot.Shows.Select(one => one.Feature.Name))}.{How(shot.Asked.How)}"),
            .. chosen.Where(one => !shots.Exists(shot => shot.Shows.Contains(one))).Select(Ask),
            isEngine ? "The engine's code and serial number as they stand on it, and a photo of the place." : "Every number on the part itself, exactly as it stands there.",
            $"One photo of the {(isEngine ? "engine" : "part")} with a sheet of paper beside it on which today's date is written.",
        ];
        for (var index = 0; index < asked.Length; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{index + 1}. {asked[index]}\n");
        }

        return text.Append("\nThere is no need to take anything apart. Thank you.").ToString();
    }

    private static string Ask(Observable one) => one.Feature.Code == Feature.Present.Code
        ? $"Is there a {one.Position?.Name.ToLowerInvariant()} on it? A photo of the place, please."
        : one.Check.Method == Method.Label
            ? $"What its label or print says of the {one.Feature.Name}{On(one)}, or a sharp photo of it.{How(one.Check.How)}"
            : $"A photo that shows: {one.Feature.Name}{On(one)}.{How(one.Check.How)}";

    private static string On(Observable one) => one.Position is null ? "" : $" ({one.Position.Name.ToLowerInvariant()})";

    private static string Place(Position? position) => position is null ? "" : $"{position.Name.ToLowerInvariant()}: ";

    private static string How(string? how) => string.IsNullOrEmpty(how) ? "" : $" {FitWording.AsSentence(how.TrimEnd('.'))}.";

    private static string What(IdentificationSubject subject)
    {
        string[] names = [.. subject.Candidates.Select(candidate => candidate.Part?.Name.ToLowerInvariant()).OfType<string>().Distinct(StringComparer.Ordinal)];
        return names is [var one] ? one : subject.Candidates[0].Part is null ? "engine" : "part";
    }

    private static string LowerFirst(string text) => text.Length == 0 ? text : char.ToLowerInvariant(text[0]) + text[1..];
}
