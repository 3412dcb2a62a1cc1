using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Finished;
using PartMatch.Storage.Editing;
using PartMatch.Web.Editing;

namespace PartMatch.Web.Finished;

/// <summary>A sitting as rows of the family's book: one piece of evidence, what more is known of it, and its findings.</summary>
internal static class SittingRows
{
    /// <param name="who">Who tells it, where the sitting does not say.</param>
    public static ChangesBody Of(FamilyFacts family, Build build, int version, Sitting sitting, string? who, RowStore rows)
    {
        var number = NextOf(build, rows);
        var evidence = EvidenceCode(build.Code, number);
        var more = Filled(("evidence", evidence), ("instrument", sitting.Instrument), ("hours", sitting.Hours), ("output", sitting.Output),
            ("fuel", sitting.Fuel));
        return new ChangesBody(
        [
            new ChangeBody("evidence", Row: Filled(
                ("evidence", evidence), ("grade", Codes.Of(Sittings.GradeOf(sitting))), ("date", sitting.Date), ("author", sitting.Author ?? who),
                ("source", Sittings.SourceOf(build.Code, version)))),
            .. more.Count > 1 ? [new ChangeBody("sources", Row: more)] : Array.Empty<ChangeBody>(),
            .. Sittings.Findings(family, build, sitting).Select((finding, index) => new ChangeBody("findings", Row: Filled(
                ("finding", string.Create(CultureInfo.InvariantCulture, $"fi-{build.Code}-{number}-{index + 1:000}")), ("part", finding.Part),
                    ("variant", finding.Variant),
                ("position", finding.Position), ("axis", Codes.Of(finding.Axis)), ("outcome", Codes.Of(finding.Outcome)),
                    ("with", string.Join('|', finding.With)),
                ("evidence", evidence), ("note", finding.Note)))),
        ]);
    }

    // Two who tell at the same time get the same number: the second is then refused by the books, and tells again.
    private static int NextOf(Build build, RowStore rows)
    {
        var number = 1;
        while (rows.Find(build.Family, "evidence", EvidenceCode(build.Code, number)) is not null)
        {
            number++;
        }

        return number;
    }

    private static string EvidenceCode(string build, int number) => string.Create(CultureInfo.InvariantCulture, $"ev-{build}-{number}");

    private static Dictionary<string, string> Filled(params (string Column, string? Cell)[] cells) =>
        cells.Where(cell => !string.IsNullOrWhiteSpace(cell.Cell)).ToDictionary(cell => cell.Column, cell => cell.Cell!.Trim()); // filtered just before
}
