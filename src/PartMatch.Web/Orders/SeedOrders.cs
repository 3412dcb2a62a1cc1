using PartMatch.Core.Builds;
using PartMatch.Core.Orders;
using PartMatch.Storage;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Listings;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Orders;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

/// <summary>The orders that travel with the demo builds.</summary>
internal static class SeedOrders
{
    private const string FolderName = "orders";

    private static readonly ChangeNote _note = new("PartMatch", "a demo order");

    /// <summary>Takes in every file, by name. The sentence that says which one is at fault, or null.</summary>
    /// <param name="seeds">The folder of the demo books, which are in the base already, as are the builds.</param>
    public static string? Load(string seeds, Database database, ILogger logger)
    {
        var folder = Path.Combine(seeds, FolderName);
        if (!Directory.Exists(folder))
        {
            return null;
        }

        var builds = new BuildStore(database, TimeProvider.System);
        var source = new BuildSource(
            new LookAlikeStamp(database), new FamilyStore(database), new OfferStore(database), new ContentsStore(database), new ItemStore(database));
        foreach (var path in Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            var (file, problem) = OrderBody.Read<OrderFile>(File.ReadAllBytes(path));
            var fault = file is null ? FaultOf(problem)
                : builds.Find(file.Build)?.Document is not { } build || source.Find(build.Family) is not { Facts: var facts } ? $"no build is named {file.Build}."
                : Store(new OrderStore(database, TimeProvider.System), facts, build, file);
            if (fault is not null)
            {
                return $"the demo orders {Path.GetFileName(seeds)}/{FolderName}/{Path.GetFileName(path)} are at fault: {fault}";
            }

            logger.LogInformation("Loaded the demo orders of {Build}", file!.Build); // without a file there is a fault
        }

        return null;
    }

    private static string? Store(OrderStore store, BuildFacts facts, Build build, OrderFile file)
    {
        foreach (var one in file.Orders)
        {
            var (terms, faults) = OrderMaking.Of(facts, build, one.Ordered, TimeProvider.System.Today());
            if (terms is null || store.Add(build.Code, terms, _note) is not OrderOutcome.Done { Now.Number: var number })
            {
                return string.Join(' ', faults);
            }

            foreach (var did in one.Events)
            {
                if (store.Append(build.Code, number, null, did, _note) is OrderOutcome.Faulty { Fault: var fault })
                {
                    return fault.ToString();
                }
            }
        }

        return null;
    }

    private static string FaultOf(Problem? problem) => problem?.Errors is [var first, ..]
        ? $"{first.Field}: found '{first.Found}', expected {first.Expected}. {first.Mend}".TrimEnd()
        : "it is no document of orders.";
}
