using PartMatch.Storage;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>The demo builds that travel with the demo books.</summary>
internal static class SeedBuilds
{
    private const string FolderName = "builds";

    /// <summary>Takes in every file, by name. The sentence that says which one is at fault, or null.</summary>
    /// <param name="seeds">The folder of the demo books, which are in the base already.</param>
    public static string? Load(string seeds, Database database, ILogger logger)
    {
        var folder = Path.Combine(seeds, FolderName);
        if (!Directory.Exists(folder))
        {
            return null;
        }

        var store = new BuildStore(database, TimeProvider.System);
        var body = new BuildBody(new BuildNames(new FamilyStore(database), new PartStore(database), new OfferStore(database), new ItemStore(database)));
        foreach (var file in Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            var (build, problem) = body.Read(File.ReadAllBytes(file));
            if (build is null || store.Create(build, new ChangeNote("PartMatch", "a demo build")) is not BuildOutcome.Done)
            {
                return $"the demo build {Path.GetFileName(seeds)}/{FolderName}/{Path.GetFileName(file)} is at fault, {FaultOf(problem)}";
            }

            logger.LogInformation("Loaded the demo build {Build}", build.Code);
        }

        return null;
    }

    private static string FaultOf(Problem? problem) => problem?.Errors is [var first, ..]
        ? $"{first.Field}: found '{first.Found}', expected {first.Expected}. {first.Mend}".TrimEnd()
        : "its code is that of another one.";
}
