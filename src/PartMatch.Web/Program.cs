using FluentValidation;
using PartMatch.Web.Books;
using PartMatch.Web.Builds;
using PartMatch.Web.Compression;
using PartMatch.Web.Consistency;
using PartMatch.Web.Donors;
using PartMatch.Web.Editing;
using PartMatch.Web.Families;
using PartMatch.Web.Finished;
using PartMatch.Web.Fit;
using PartMatch.Web.Health;
using PartMatch.Web.History;
using PartMatch.Web.Host;
using PartMatch.Web.Http;
using PartMatch.Web.Identification;
using PartMatch.Web.Injectors;
using PartMatch.Web.Items;
using PartMatch.Web.Listings;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Offers;
using PartMatch.Web.Parts;
using PartMatch.Web.Photos;
using PartMatch.Web.Sellers;
using PartMatch.Web.Supply;
using PartMatch.Web.Tightening;
using PartMatch.Web.ValveTiming;
using PartMatch.Web.Variants;

var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = ServerDefaults.FindContentRoot() });
if (KeepingCommands.Run(args, builder.Configuration) is { } exitCode)
{
    return exitCode;
}

builder.AddServerDefaults();
builder.Services.ConfigureHttpJsonOptions(options => JsonRules.Apply(options.SerializerOptions));
builder.Services.AddOpenApi(ApiDocument.Name, ApiDocument.Apply);
builder.Services.AddValidatorsFromAssemblyContaining<Program>(includeInternalTypes: true);
builder.Services.AddBase();

await using var app = builder.Build();
app.UseMiddleware<SecurityHeaders>();
app.UseMiddleware<RequestLog>();
app.UseMiddleware<Problems>();
app.UseMiddleware<HostCheck>();
app.UseMiddleware<WriteCheck>();
app.UseResponseCompression();
app.UseDefaultFiles();
app.UseStaticFiles();
app.UseMiddleware<HeadRequests>();
app.UseRouting();

var api = app.MapGroup("/api").CheckRequests();
api.MapFamilies();
api.MapParts();
api.MapCompare();
api.MapFit();
api.MapLookAlikes();
api.MapTellApart();
api.MapListings();
api.MapInjectors();
api.MapFuelSupply();
api.MapTightening();
api.MapValveTiming();
api.MapCompression();
api.MapConsistency();
api.MapBooks();
api.MapMerge();
api.MapRows();
api.MapHistory();
api.MapItems();
api.MapImages();
api.MapSellers();
api.MapOffers();
api.MapPrices();
api.MapPriceLists();
api.MapBuilds();
api.MapBuildChanges();
api.MapPlans();
api.MapWhys();
api.MapFrontiers();
api.MapDonors();
api.MapYardList();
api.MapFinished();
api.MapHealth();
app.MapProblemTypes();
app.MapOpenApi("/openapi.json");

return await Server.RunAsync(app);
