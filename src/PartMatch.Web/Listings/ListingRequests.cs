using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Listings;

public sealed record ListingRequest(
    [property: FromQuery(Name = "family"), Description("The family of the engine; with variant and position, or none of the three.")] string? Family,
    [property: FromQuery(Name = "variant"), Description("The engine that the part is to go on.")] string? Variant,
    [property: FromQuery(Name = "position"), Description("Where on it.")] string? Position,
    [property: FromQuery(Name = "built"), Description("Build date of the engine: YYYY-MM or YYYY-MM-DD.")] string? Built,
    [property: FromQuery(Name = "serial"), Description("Serial number of the engine: digits.")] string? Serial,
    [property: FromQuery(Name = "level"), Description("How much of an assembly is needed: bare, short, long, complete or heard-running.")] string? Level)
{
    internal AssemblyLevel? Needed => string.IsNullOrEmpty(Level) ? null : Codes.Find<AssemblyLevel>(Level);

    internal bool NamesPlace => !string.IsNullOrEmpty(Family) || !string.IsNullOrEmpty(Variant) || !string.IsNullOrEmpty(Position);

    internal NeededPlace PlaceIn(FamilyFacts facts) => new(facts, Variant ?? "", Position ?? "", BuildDate.Find(Built ?? ""), CommonRules.FindWhole(Serial));
}

internal sealed class ListingRules : AbstractValidator<ListingRequest>
{
    public ListingRules()
    {
        When(request => request.NamesPlace, () =>
        {
            RuleFor(request => request.Family).MustBeGiven("the code of a family", "family, variant and position go together; the families are listed at /api/families");
            RuleFor(request => request.Variant).MustBeGiven("the code of a variant", "family, variant and position go together");
            RuleFor(request => request.Position).MustBeGiven("the code of a position", "family, variant and position go together");
        });
        RuleFor(request => request.Built).Must(built => BuildDate.Find(built ?? "") is not null)
            .Otherwise("YYYY-MM or YYYY-MM-DD", "for example built=2017-01; leave it out when the date is not known").When(request => request.Built is not null);
        RuleFor(request => request.Serial).Must(serial => CommonRules.FindWhole(serial) is not null)
            .Otherwise("a whole number, digits only", "for example serial=41206; leave it out when it is not known").When(request => request.Serial is not null);
        RuleFor(request => request.Level).MustBeCode<ListingRequest, AssemblyLevel>().When(request => request.Level is not null);
    }
}
