using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Storage.LookAlikes;

/// <summary>What was counted of offers and deliveries: the offers that the books hold, and those that were seen and only counted.</summary>
/// <remarks>
/// One thing for sale that was seen n times is one: of the same seller, condition, level and page only those of the latest day count, as
/// <see cref="PartMatch.Core.Buying.OfferMemory"/> tells the same offer by seller and condition.
/// </remarks>
public sealed class OddsStore(Database database)
{
    private readonly Snapshot<Odds> _odds = new(database);

    /// <summary>Counts of the parts that the base describes; <see cref="Odds.None"/> when nothing is counted. The same instance until the base changes.</summary>
    public Odds Get() => _odds.Find("", Read) ?? Odds.None;

    private static Odds Read(SqliteConnection connection)
    {
        var offers = connection.Query<OffersRow>(
            """
            select p.part, sum(c.offers) as offers
            from (
              select part_key, count(*) as offers
              from (
                select o.part_key,
                  rank() over (partition by o.part_key, o.seller_book, o.seller, o.condition, o.level, l.address order by o.seen_on desc) as place
                from offers o
                left join listings l on l.book = o.book and l.listing = o.listing
                where o.part_key is not null
              )
              where place = 1
              group by part_key
              union all
              select part_key, offers
              from part_odds
            ) c
            join parts p on p.part_key = c.part_key
            group by p.part
            """).ToDictionary(row => row.Part, row => (int)Math.Min(row.Offers, int.MaxValue), StringComparer.Ordinal);
        var mixUps = connection.Query<MixUpRow>(
            """
            select a.part as asked, s.part as sent, sum(o.deliveries) as deliveries, sum(o.wrong) as wrong
            from (
              select asked_part_key, sent_part_key, deliveries, wrong
              from mix_up_odds
              union all
              select w.asked_part_key, w.sent_part_key, (select count(*) from deliveries d where d.asked_part_key = w.asked_part_key), count(*)
              from deliveries w
              where w.other_part = 1 and w.sent_part_key is not null
              group by w.asked_part_key, w.sent_part_key
            ) o
            join parts a on a.part_key = o.asked_part_key
            join parts s on s.part_key = o.sent_part_key
            group by a.part, s.part
            order by a.part, s.part
            """).Select(row => new MixUpCount(
                row.Asked, row.Sent, (int)Math.Min(row.Deliveries, int.MaxValue), (int)Math.Min(row.Wrong, int.MaxValue))).ToList();
        return offers.Count + mixUps.Count > 0 ? new Odds(offers, mixUps) : Odds.None;
    }

    // Not positional: a sum has no type in an empty base.
    private sealed record OffersRow
    {
        public string Part { get; init; } = "";

        public long Offers { get; init; }
    }

    private sealed record MixUpRow
    {
        public string Asked { get; init; } = "";

        public string Sent { get; init; } = "";

        public long Deliveries { get; init; }

        public long Wrong { get; init; }
    }
}
