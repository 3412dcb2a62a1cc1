using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Fit;

public sealed record FitRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variant"), Required, Description("The engine that the part is to go on.")] string? Variant,
    [property: FromQuery(Name = "position"), Required, Description("Where on it.")] string? Position,
    [property: FromQuery(Name = "part"), Description("The part's number, or maker:number, or none to leave the position empty. One of this, from or item.")] string? Part,
    [property: FromQuery(Name = "from"), Description("The variant whose part at this position is asked about. One of this, part or item.")] string? From,
    [property: FromQuery(Name = "item"), Description("One example of a part in hand, by its code in the family's book: what was read on it counts instead of what is recorded of its number. One of this, part or from.")] string? Item,
    [property: FromQuery(Name = "maker"), Description("Whose number it is, where several makers use it.")] string? Maker,
    [property: FromQuery(Name = "built"), Description("Build date of the engine: YYYY-MM or YYYY-MM-DD.")] string? Built,
    [property: FromQuery(Name = "serial"), Description("Serial number of the engine: digits.")] string? Serial,
    [property: FromQuery(Name = "with"), Description("A neighbour that will really be there, as position=part or position=none; may be repeated.")] string[]? With)
{
    /// <summary>How many of the ways to say what is asked about are used.</summary>
    internal int Subjects => new[] { Part, From, Item }.Count(subject => !string.IsNullOrEmpty(subject));

    /// <summary>Is it asked whether the position can stay empty?</summary>
    internal bool IsAboutNothing => Part == Core.Catalogue.Part.None;

    /// <summary>The neighbours in the order given; a text without an equals sign has no part.</summary>
    internal IReadOnlyList<(string Position, string Part)> Neighbours =>
        [.. (With ?? []).Select(text => text.Split('=', 2)).Select(pair => (pair[0], pair.Length == 2 ? pair[1] : ""))];
}

internal sealed class FitRules : AbstractValidator<FitRequest>
{
    public FitRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
        RuleFor(request => request.Position).MustBeGiven("the code of a position", "the positions are listed with their family");
        RuleFor(request => request.Part).Must((request, _) => request.Subjects == 1)
            .WithState(request => new Mending(
                "one of part=, from= or item=", "part= asks about a number, from= about what another variant has there, item= about one example in hand",
                request.Subjects == 0 ? "none of them" : "several of them"));
        RuleFor(request => request.Part).MustBeNumber()
            .When(request => !string.IsNullOrEmpty(request.Part));
        RuleFor(request => request.Maker).Must((request, maker) => !string.IsNullOrEmpty(request.Part) && SameMaker(maker, request.Part))
            .Otherwise("the maker of the number in part=", "leave maker out, or give it once")
            .When(request => request.Maker is not null);
        RuleFor(request => request.Built).Must(built => BuildDate.Find(built ?? "") is not null)
            .Otherwise("YYYY-MM or YYYY-MM-DD", "for example built=2017-01; leave it out when the date is not known").When(request => request.Built is not null);
        RuleFor(request => request.Serial).Must(serial => CommonRules.FindWhole(serial) is not null)
            .Otherwise("a whole number, digits only", "for example serial=41206; leave it out when it is not known").When(request => request.Serial is not null);
        RuleFor(request => request.With).Must((request, _) => FindBadNeighbour(request) is null)
            .WithState(request => new Mending(
                "position=part or position=none, each position once, and not the position asked about", "for example with=crank-damper=P-13-1101-A",
                FindBadNeighbour(request)));
    }

    private static bool SameMaker(string? maker, string? part) => NamedPart.Split(part ?? "").Maker is not { } written || written == maker;

    private static string? FindBadNeighbour(FitRequest request)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { request.Position ?? "" };
        return request.Neighbours.Where(pair => !seen.Add(pair.Position) || !CommonRules.IsNumber(pair.Part))
            .Select(pair => $"{pair.Position}={pair.Part}").FirstOrDefault();
    }
}
