using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Storage.LookAlikes;

/// <summary>What was counted of offers and deliveries.</summary>
public sealed class OddsStore(Database database)
{
    private readonly Snapshot<Odds> _odds = new(database);

    /// <summary>Counts of the parts that the base describes; <see cref="Odds.None"/> when nothing is counted. The same instance until the base changes.</summary>
    public Odds Get() => _odds.Find("", Read) ?? Odds.None;

    private static Odds Read(SqliteConnection connection)
    {
        var offers = connection.Query<OffersRow>(
            """
            select p.part, o.offers
            from part_odds o
            join parts p on p.part_key = o.part_key
            """).ToDictionary(row => row.Part, row => (int)row.Offers, StringComparer.Ordinal);
        var mixUps = connection.Query<MixUpRow>(
            """
            select a.part as asked, s.part as sent, o.deliveries, o.wrong
            from mix_up_odds o
            join parts a on a.part_key = o.asked_part_key
            join parts s on s.part_key = o.sent_part_key
            order by a.part, s.part
            """).Select(row => new MixUpCount(row.Asked, row.Sent, (int)row.Deliveries, (int)row.Wrong)).ToList();
        return offers.Count + mixUps.Count > 0 ? new Odds(offers, mixUps) : Odds.None;
    }

    // The tables hold no count that is too large for an int.
    private sealed record OffersRow(string Part, long Offers);

    private sealed record MixUpRow(string Asked, string Sent, long Deliveries, long Wrong);
}
