using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Items;

public sealed record ItemsRequest([property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family);

internal sealed class ItemsRules : AbstractValidator<ItemsRequest>
{
    public ItemsRules() => RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
}

public sealed record PromotionRequest(
    [property: FromRoute(Name = "family"), Description("Code of the family.")] string Family,
    [property: FromRoute(Name = "item"), Description("Code of the item.")] string Item,
    [property: FromQuery(Name = "feature"), Required, Description("The feature whose reading shall count for the number.")] string? Feature,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

internal sealed class PromotionRules : AbstractValidator<PromotionRequest>
{
    public PromotionRules()
    {
        RuleFor(request => request.Feature).MustBeGiven("a feature that was read on the item", "the item's readings name them");
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}
