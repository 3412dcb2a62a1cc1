using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Merge;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Storage.History;
using PartMatch.Storage.Items;
using PartMatch.Storage.Listings;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Orders;
using PartMatch.Storage.Parts;
using PartMatch.Storage.Photos;
using PartMatch.Web.Builds;
using PartMatch.Web.Listings;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Orders;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Host;

/// <summary>The base, and what reads and writes it: one of each for the whole server.</summary>
internal static class BaseServices
{
    public static void AddBase(this IServiceCollection services)
    {
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<OpenedBase>();
        services.AddSingleton(provider => provider.GetRequiredService<OpenedBase>().Database);
        services.AddSingleton<BookStore>();
        services.AddSingleton<MergeStore>();
        services.AddSingleton<ItemStore>();
        services.AddSingleton<PromotionStore>();
        services.AddSingleton<RowStore>();
        services.AddSingleton<EditStore>();
        services.AddSingleton<HistoryStore>();
        services.AddSingleton<UndoStore>();
        services.AddSingleton<FamilyStore>();
        services.AddSingleton<PartStore>();
        services.AddSingleton<NumberStore>();
        services.AddSingleton<OddsStore>();
        services.AddSingleton<ImageStore>();
        services.AddSingleton<OfferStore>();
        services.AddSingleton<OfferEntry>();
        services.AddSingleton<LookAlikeStamp>();
        services.AddSingleton<NumberSource>();
        services.AddSingleton<PartIndexSource>();
        services.AddSingleton<LookAlikeSource>();
        services.AddSingleton<ContentsStore>();
        services.AddSingleton<ListingSource>();
        services.AddSingleton<BuildStore>();
        services.AddSingleton<OrderStore>();
        services.AddSingleton<GoodsInStore>();
        services.AddSingleton<BuildOrders>();
        services.AddSingleton<GoodsInRecording>();
        services.AddSingleton<BuildNames>();
        services.AddSingleton<BuildBody>();
        services.AddSingleton<BuildSource>();
        services.AddSingleton<BuildSolves>();
        services.AddSingleton<PlanQuestions>();
    }
}
