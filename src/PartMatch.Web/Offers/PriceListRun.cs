using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Storage.Offers;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Offers;

/// <summary>Judges a price list row by row and stores it, or says why not.</summary>
internal sealed class PriceListRun(PriceListAsked asked, PriceListReading.Read read, PriceListMapping mapping, PriceList list, OfferEntry entry)
{
    /// <summary>Rows between two reports.</summary>
    private const int RowsPerReport = 250;

    private const int MaxErrors = 100;

    /// <summary>Reports, and last the answer or the problem.</summary>
    public IEnumerable<object> Steps(CancellationToken cancellation)
    {
        var table = read.Table;
        var lines = new List<PriceListLine>(table.Rows.Count);
        foreach (var row in table.Rows)
        {
            cancellation.ThrowIfCancellationRequested();
            lines.Add(list.Read(row));
            if (lines.Count % RowsPerReport == 0)
            {
                yield return new PriceListProgress(lines.Count, table.Rows.Count);
            }
        }

        yield return new PriceListProgress(lines.Count, table.Rows.Count);
        PriceListLine[] sound = [.. lines.Where(line => !line.IsFaulty)];
        if (!asked.DryRun && lines.Count > 0 && (sound.Length == 0 || lines.Exists(Blocks)))
        {
            yield return Faulty(lines);
            yield break;
        }

        yield return entry.Store(asked.Book, [.. sound.Select(ToDraft)], null, null, NoteRules.Note(asked.Who, asked.Why), asked.DryRun, cancellation) switch
        {
            OfferOutcome.Done done => Answer(lines, done),
            OfferOutcome.Faulty faulty => Faulty(faulty, sound),
            OfferOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, "mend those rows first").Problem,
            var other => throw new InvalidOperationException($"Storing a price list ended as {other.GetType().Name}, which no answer names."),
        };
    }

    private bool Blocks(PriceListLine line) => line.IsFaulty && !(line.IsUnpriced && asked.LeaveOut is not null);

    private OfferDraft ToDraft(PriceListLine line) => new(new (string Column, string? Cell)[]
    {
        ("seller", asked.Seller), ("part", line.Sold?.Recorded), ("numberAsWritten", line.Number), ("price", line.Price?.Amount), ("currency", asked.Currency),
        ("pack", Text(line.Pack)), ("stock", Text(line.Stock)), ("condition", line.Condition == ItemCondition.NotStated ? null : Codes.Of(line.Condition)),
        ("coreDeposit", line.CoreDeposit?.Amount), ("seenOn", asked.SeenOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), ("note", line.Note),
    }.Where(cell => cell.Cell is not null).ToDictionary(cell => cell.Column, cell => cell.Cell!, StringComparer.Ordinal)); // filtered for null

    private PriceListAnswer Answer(List<PriceListLine> lines, OfferOutcome.Done done)
    {
        var taken = new Queue<OfferTaken>(done.Offers);
        PriceListRowAnswer[] rows = [.. lines.Select(line => RowOf(line, line.IsFaulty ? null : taken.Dequeue()))];
        int Count(SoldVerdict verdict) => rows.Count(row => row.NotStored is null && row.Verdict == verdict);
        int Hindered(NotStored why) => rows.Count(row => row.NotStored == why);
        var isNew = done.Offers.Count(offer => offer.IsNew);
        var counts = new PriceListCounts(
            rows.Length, Count(SoldVerdict.KnownPart), Count(SoldVerdict.KnownElsewhere), Count(SoldVerdict.NarrowsOnly),
            Count(SoldVerdict.LookAlikeCharacters),
            Count(SoldVerdict.Unknown), Hindered(NotStored.WithoutPrice), Hindered(NotStored.Faulty), isNew, done.Offers.Count - isNew);
        return new PriceListAnswer(
            asked, asked.DryRun ? OfferResult.WouldStore : isNew == 0 ? OfferResult.AlreadyStored : OfferResult.Stored, done.Change, read.Tables, mapping,
            read.Table.Columns, list.DecimalMark.Mark is { } mark ? PriceMark.NameOf(mark) : null, list.DecimalMark.Because, counts, rows,
            new Permalink("/api/offers").With("seller", asked.Seller).ToString());
    }

    private PriceListRowAnswer RowOf(PriceListLine line, OfferTaken? taken) => new(
        line.Line, line.Number, line.Sold?.Verdict, line.Sold?.Text ?? "",
        line.IsUnpriced ? NotStored.WithoutPrice : line.IsFaulty ? NotStored.Faulty : null,
        line.Sold?.Part, line.Sold?.Nearest ?? [], line.Sold?.Dangers ?? [], line.Price, line.Pack, line.Stock, line.Condition, line.CoreDeposit, line.Note,
        taken is null || (asked.DryRun && taken.IsNew) ? null : taken.Code, taken is { IsNew: false }, taken?.Earlier?.Text, line.Faults);

    private Problem Faulty(List<PriceListLine> lines)
    {
        List<PriceListLine> faulty = lines.Exists(Blocks) ? lines.FindAll(Blocks) : lines;
        var unpriced = faulty.Count(line => line.IsUnpriced);
        var choice = unpriced > 0 && asked.LeaveOut is null ? $" {unpriced} of them have no price: leave-out=without-price leaves exactly those out." : "";
        return Problem.Of("bad-row", [.. faulty.SelectMany(line => line.Faults, ToError).Take(MaxErrors)]) with
        {
            Detail = string.Create(
                CultureInfo.InvariantCulture,
                $"{faulty.Count} of {lines.Count} rows cannot be stored.{choice} Nothing was stored: ask with dry-run=true for the verdict of every row."),
        };
    }

    private static FieldError ToError(PriceListLine line, CellFault fault) =>
        new(fault.Column, fault.Found, fault.Expected, fault.Mend) { Line = line.Line, Column = fault.Column };

    // What only the checks of the book find.
    private static Problem Faulty(OfferOutcome.Faulty faulty, PriceListLine[] sound) => Problem.Of(
        "bad-row",
        [
            .. faulty.Faults.Take(MaxErrors).Select(fault => FieldError.OfCell(fault.Column ?? "row", fault.Found, fault.Reason, fault.Suggestion) with
            {
                Line = fault.Row >= 0 ? sound[fault.Row].Line : null, Column = fault.Column,
            }),
        ]);

    private static string? Text(int? number) => number?.ToString(CultureInfo.InvariantCulture);
}
