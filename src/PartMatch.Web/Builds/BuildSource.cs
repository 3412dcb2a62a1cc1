using PartMatch.Core.Builds;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Listings;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Offers;

namespace PartMatch.Web.Builds;

/// <param name="Memory">What was found out from these facts of the family; a new one where they are others.</param>
internal sealed record BuildGrounds(BuildFacts Facts, FitMemory Memory);

/// <summary>
/// What builds are planned from, kept for each family until something of it changes: storing a build or an offer makes no fit answer another one.
/// </summary>
internal sealed class BuildSource(LookAlikeStamp stamps, FamilyStore families, OfferStore offers, ContentsStore contents, ItemStore items)
{
    // Each question may add some hundred fit answers that no other build asks for.
    private const int MostQuestions = 200;

    private readonly Dictionary<string, Kept> _kept = new(StringComparer.Ordinal);
    private readonly Lock _lock = new();

    private sealed record Kept(string Stamp, BuildGrounds Grounds, int Questions);

    /// <summary>Null where the base does not hold the family.</summary>
    public BuildGrounds? Find(string family)
    {
        lock (_lock)
        {
            var buying = offers.Facts();
            var examples = items.List(family);

            // The stamp leaves out the items; a list in a record has no text of its own.
            var told = examples.Select(item => $"{item}\n{string.Join('\n', item.Readings)}\n{string.Join('\n', item.WorksDone)}");
            var stamp = string.Join('\n', told.Prepend(stamps.Get()));
            if (_kept.TryGetValue(family, out var kept) && kept.Stamp == stamp && kept.Questions < MostQuestions)
            {
                var facts = ReferenceEquals(kept.Grounds.Facts.Buying, buying) ? kept.Grounds.Facts : kept.Grounds.Facts with { Buying = buying };
                return (_kept[family] = kept with { Grounds = kept.Grounds with { Facts = facts }, Questions = kept.Questions + 1 }).Grounds;
            }

            if (families.FindFamily(family) is not { } found)
            {
                return null;
            }

            return (_kept[family] = new Kept(stamp, new BuildGrounds(new BuildFacts(found, buying, contents.All(), examples), new FitMemory()), 1)).Grounds;
        }
    }
}
