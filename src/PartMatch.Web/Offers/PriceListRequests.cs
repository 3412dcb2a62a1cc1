using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Globalization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Offers;

public sealed record PriceListRequest(
    [property: FromQuery(Name = "book"), Required, Description("The book that shall hold the offers.")] string? Book,
    [property: FromQuery(Name = "seller"), Required, Description("Code of the seller, of the book or of one it uses.")] string? Seller,
    [property: FromQuery(Name = "currency"), Description("Of the prices; that of the seller when left out.")] string? Currency,
    [property: FromQuery(Name = "seen-on"), Description("The day of the list, YYYY-MM-DD; today (UTC) when left out.")] string? SeenOn,
    [property: FromQuery(Name = "table"), Description("Which table of a page, from 1; when left out the widest with columns of part numbers and prices.")] string? Table,
    [property: FromQuery(Name = "number"), Description("The column of the part numbers: its head, or its place from 1. Proposed from heads and content when left out, as with the other columns.")] string? Number,
    [property: FromQuery(Name = "price"), Description("The column of the prices.")] string? Price,
    [property: FromQuery(Name = "quantity"), Description("The column of the packs in stock; none for no column.")] string? Quantity,
    [property: FromQuery(Name = "pack"), Description("The column of the pieces that a price is for; none for no column: then each price is for one piece.")] string? Pack,
    [property: FromQuery(Name = "condition"), Description("The column of the conditions; new, refurbished, used or damaged for every row; none for no column.")] string? Condition,
    [property: FromQuery(Name = "core-deposit"), Description("The column of the deposits for an old part; none for no column.")] string? CoreDeposit,
    [property: FromQuery(Name = "note"), Description("The column that becomes the note; none for no column.")] string? Note,
    [property: FromQuery(Name = "decimal"), Description("point or comma, where the prices alone do not show which it is.")] string? DecimalMark,
    [property: FromQuery(Name = "leave-out"),
        Description("without-price to leave out the rows that have words or nothing instead of a price; when left out such a row keeps the whole list out.")] string? LeaveOut,
    [property: FromQuery(Name = "dry-run"), Description("true to judge every row and store nothing; false when left out.")] string? DryRun,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal const string WithoutPrice = "without-price";

    private const string NoColumn = "none";

    /// <summary>The condition of every row, where the question names one.</summary>
    internal ItemCondition EveryCondition => Codes.Find<ItemCondition>(Condition ?? "") ?? ItemCondition.NotStated;

    internal int? TablePlace => int.TryParse(Table, NumberStyles.None, CultureInfo.InvariantCulture, out var place) ? place : null;

    internal char? Mark => DecimalMark switch
    {
        "point" => '.',
        "comma" => ',',
        _ => null,
    };

    internal PriceListAsked ToAsked(string currency, DateOnly today) => new(
        Book ?? "", Seller ?? "", currency, OfferRules.DayOf(SeenOn) ?? today, DecimalMark, Codes.Find<ItemCondition>(Condition ?? ""), LeaveOut, DryRun == "true",
        Who, Why);

    /// <summary>The columns that the question names, from 0, or null where it says that there is none; and what is wrong with them.</summary>
    internal (IReadOnlyDictionary<PriceColumn, int?> Columns, IReadOnlyList<FieldError> Faults) Given(PriceListTable table)
    {
        var columns = new Dictionary<PriceColumn, int?>();
        var faults = new List<FieldError>();
        foreach (var (holds, field, text) in new[]
        {
            (PriceColumn.Number, "number", Number), (PriceColumn.Price, "price", Price), (PriceColumn.Quantity, "quantity", Quantity),
            (PriceColumn.Pack, "pack", Pack),
            (PriceColumn.Condition, "condition", Condition), (PriceColumn.CoreDeposit, "core-deposit", CoreDeposit), (PriceColumn.Note, "note", Note),
        })
        {
            if (string.IsNullOrEmpty(text))
            {
                continue;
            }

            var at = table.Headers.Index().Where(head => string.Equals(head.Item, text.Trim(), StringComparison.OrdinalIgnoreCase))
                .Select(head => (int?)head.Index).FirstOrDefault()
                ?? (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var place) && place >= 1 && place <= table.Headers.Count
                    ? place - 1 : null);
            if (at is not null || text == NoColumn || (holds == PriceColumn.Condition && EveryCondition != ItemCondition.NotStated))
            {
                columns[holds] = at;
            }
            else
            {
                faults.Add(new FieldError(
                    field, text, $"the head of a column, or its place from 1 to {table.Headers.Count}", $"the heads are {string.Join(", ", table.Headers)}"));
            }
        }

        return (columns, faults);
    }
}

internal sealed class PriceListRules : AbstractValidator<PriceListRequest>
{
    public PriceListRules()
    {
        RuleFor(request => request.Book).MustBeGiven("the name of a book of the base", "the books are listed at /api/books");
        RuleFor(request => request.Seller).MustBeGiven("the code of a seller", "the sellers are listed at /api/sellers");
        RuleFor(request => request.Currency).MustBeCurrency();
        RuleFor(request => request.SeenOn).MustBeDay();
        RuleFor(request => request.Table).Must(table => string.IsNullOrEmpty(table) || int.TryParse(table, NumberStyles.None, CultureInfo.InvariantCulture,
            out var place) && place > 0).Otherwise("the place of a table on the page, from 1", "leave it out to have one proposed");
        RuleFor(request => request.Number).Must(column => column != "none").Otherwise("the head of a column, or its place",
            "without part numbers nobody can tell what is for sale");
        RuleFor(request => request.Price).Must(column => column != "none").Otherwise("the head of a column, or its place", "an offer needs a price");
        RuleFor(request => request.DecimalMark).Must(mark => mark is null or "point" or "comma").Otherwise("point or comma",
            "leave it out where the prices show it");
        RuleFor(request => request.LeaveOut).Must(rows => rows is null or PriceListRequest.WithoutPrice).Otherwise(PriceListRequest.WithoutPrice,
            "leave it out to have every row stored or none");
        RuleFor(request => request.DryRun).Must(dryRun => dryRun is null or "true" or "false").Otherwise("true or false",
            "leave dry-run out to store the offers");
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

/// <summary>What was made of a price list.</summary>
/// <param name="Change">Its number in the history; absent when nothing was stored.</param>
/// <param name="Tables">Of a page: which of its tables was read, and what of it was left out; absent for a CSV file.</param>
/// <param name="Columns">Every column of the list, with its first cells.</param>
/// <param name="DecimalMark">The decimal mark that the prices were read with; absent where it made no difference.</param>
/// <param name="DecimalBecause">What settles it, or contradicts itself; absent where no price has a mark.</param>
/// <param name="Rows">Every row, in the order of the list.</param>
public sealed record PriceListAnswer(
    PriceListAsked Asked, OfferResult Result, long? Change, PriceListTables? Tables, PriceListMapping Mapping, IReadOnlyList<PriceListColumn> Columns,
    string? DecimalMark, string? DecimalBecause,
    PriceListCounts Counts, IReadOnlyList<PriceListRowAnswer> Rows, string Permalink);

/// <param name="Condition">Of every row; absent where a column says it, or nothing.</param>
/// <param name="LeaveOut">Which rows are left out; absent where all are stored or none.</param>
public sealed record PriceListAsked(
    string Book, string Seller, string Currency, DateOnly SeenOn, string? DecimalMark, ItemCondition? Condition, string? LeaveOut, bool DryRun,
    string? Who, string? Why);

/// <param name="KnownPart">This and the other verdicts: of the rows that can be stored.</param>
/// <param name="WithoutPrice">Rows with words or nothing instead of a price.</param>
/// <param name="New">Offers that the base has not, and that are stored now or would be.</param>
/// <param name="AlreadyStored">Offers that the base has, or that stand twice in the list.</param>
public sealed record PriceListCounts(int Rows, int KnownPart, int KnownElsewhere, int NarrowsOnly, int LookAlikeCharacters, int Unknown, int WithoutPrice,
    int Faulty, int New, int AlreadyStored);

/// <summary>One row, with its verdict.</summary>
/// <param name="Verdict">What its number is; absent where it holds none.</param>
/// <param name="Text">The verdict in words.</param>
/// <param name="NotStored">Why it cannot be stored; absent where it can.</param>
/// <param name="Offer">Code of the offer that it is; absent where it cannot be stored, or nothing is stored.</param>
/// <param name="Dangers">Parts that its number can be taken for with medium or high danger, the most dangerous first.</param>
public sealed record PriceListRowAnswer(
    int Line, string Number, SoldVerdict? Verdict, string Text, NotStored? NotStored, string? Part, IReadOnlyList<Core.Fit.NearestNumber> Nearest,
    IReadOnlyList<Core.Fit.LookAlikeWarning> Dangers, Core.Measures.Money? Price, int? Pack, int? Stock, ItemCondition Condition, Core.Measures.Money? CoreDeposit, string? Note, string? Offer, bool AlreadyStored, string? Earlier,
        IReadOnlyList<CellFault> Faults);

/// <summary>Why a row of a price list cannot be stored.</summary>
public enum NotStored
{
    /// <summary>Words or nothing instead of a price: left out where the question says so.</summary>
    WithoutPrice,

    /// <summary>Something of it cannot be read.</summary>
    Faulty,
}

/// <summary>How far a long price list is.</summary>
public sealed record PriceListProgress(int Rows, int Of);
