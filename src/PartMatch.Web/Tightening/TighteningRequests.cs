using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Tightening;
using PartMatch.Web.Http;

namespace PartMatch.Web.Tightening;

public sealed record TighteningRequest(
    [property: FromQuery(Name = "family"), Description("Code of the family; left out where thread and torque are typed.")] string? Family,
    [property: FromQuery(Name = "variant"), Description("The engine that the fastener is on.")] string? Variant,
    [property: FromQuery(Name = "position"), Description("The place of the fastener: its records, and what they do.")] string? Position,
    [property: FromQuery(Name = "part"), Description("Sits there instead of what the maker fitted: a number, or maker:number.")] string? Part,
    [property: FromQuery(Name = "thread"), Description("ISO metric: M10×1.25; M10 means the coarse pitch. As recorded when left out.")] string? Thread,
    [property: FromQuery(Name = "class"), Description("Property class on the head: 8.8, 10.9 or 12.9. As recorded when left out, else over all three.")]
    string? Class,
    [property: FromQuery(Name = "lubrication"), Description("Threads as they are: dry, oiled, zinc-plated, cadmium-plated or other; over all when left out.")]
    string? Lubrication,
    [property: FromQuery(Name = "torque"), Description("To be judged, as one value or low..expected..high: 75 N·m, 70..75..80 N·m, 55 lbf·ft.")] string? Torque,
    [property: FromQuery(Name = "angle"), Description("By which the bolt is turned on afterwards: refused, for then the torque says nothing.")] string? Angle,
    [property: FromQuery(Name = "nut-factor"), Description("Measured on such a joint, as low..expected..high; stands for the lubrication.")] string? NutFactor,
    [property: FromQuery(Name = "scatter"), Description("Of the preload at one torque, either way; 30 % when left out.")] string? Scatter)
{
    /// <summary>Is a place asked about, or is everything typed?</summary>
    internal bool NamesAPlace => !string.IsNullOrEmpty(Family) || !string.IsNullOrEmpty(Variant) || !string.IsNullOrEmpty(Position);

    /// <summary>The question, once the rules have passed.</summary>
    internal TighteningQuestion ToQuestion(FastenerPlace? place) => new()
    {
        Place = place,
        Thread = string.IsNullOrWhiteSpace(Thread) ? null : Thread,
        Class = PropertyClass.Find(Class ?? ""),
        Lubrication = Codes.Find<Lubrication>(Lubrication ?? ""),
        Torque = FindRange(Torque, Dimension.Torque),
        Angle = FindQuantity(Angle, Dimension.Angle),
        NutFactor = FindRange(NutFactor, Dimension.Ratio),
        Scatter = FindQuantity(Scatter, Dimension.Ratio),
    };

    /// <summary>The address that asks this again, with what was left out filled in.</summary>
    internal string Permalink(string path = "/api/tightening") => new Permalink(path)
        .With("family", Family).With("variant", Variant).With("position", Position).With("part", Part).With("thread", Thread).With("class", Class)
        .With("lubrication", Lubrication).With("torque", Torque).With("nut-factor", NutFactor).With("scatter", Scatter ?? "30 %").ToString();

    private static QuantityRange? FindRange(string? text, Dimension dimension) =>
        text is not null && QuantityRangeParser.Parse(text, dimension) is RangeRead read ? read.Range : null;

    private static Quantity? FindQuantity(string? text, Dimension dimension) =>
        text is not null && QuantityParser.Parse(text, dimension) is QuantityRead read ? read.Quantity : null;
}

internal sealed class TighteningRules : AbstractValidator<TighteningRequest>
{
    public TighteningRules()
    {
        When(request => request.NamesAPlace, () =>
        {
            RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
            RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "the variants are listed with their family");
            RuleFor(request => request.Position)
                .MustBeGiven("the code of a position", "the positions are listed with their family; bolts have the role fastener");
        }).Otherwise(() =>
        {
            RuleFor(request => request.Thread).MustBeGiven("a thread, or a family with variant and position", "for example thread=M10×1.25");
            RuleFor(request => request.Torque).MustBeGiven("a torque to judge", "for example torque=75 N·m; none is ever proposed")
                .When(request => request.Angle is null);
            RuleFor(request => request.Part).Must(part => part is null)
                .Otherwise("a part together with its place: family=, variant= and position=", "give its place, or leave the part out and type its thread");
        });
        RuleFor(request => request.Part).Must(part => part is null || CommonRules.IsNumber(part))
            .Otherwise("a part number, or maker:number", "leave it out for what the maker fitted");
        RuleFor(request => request.Class).Must(text => text is null || PropertyClass.Find(text) is not null)
            .Otherwise($"one of {string.Join(", ", PropertyClass.All.Select(one => one.Code))}", "leave it out where it is not known");
        RuleFor(request => request.Lubrication).Must(text => text is null || Codes.Find<Lubrication>(text) is not null)
            .Otherwise($"one of {string.Join(", ", Codes.All<Lubrication>())}", "leave it out where it is not known");
        RuleFor(request => request.Torque).MustBeRange(Dimension.Torque);
        RuleFor(request => request.Angle).MustBeQuantity(Dimension.Angle);
        RuleFor(request => request.NutFactor).MustBeRange(Dimension.Ratio);
        RuleFor(request => request.Scatter).MustBeQuantity(Dimension.Ratio);
    }
}
