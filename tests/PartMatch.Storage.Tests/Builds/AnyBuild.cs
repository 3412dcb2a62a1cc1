using System.Text;
using PartMatch.Core.Builds;
using PartMatch.Storage.Builds;
using Xunit;

namespace PartMatch.Storage.Tests.Builds;

/// <summary>A build with something in every member.</summary>
internal static class AnyBuild
{
    public static Build Of(string code = "spare", string title = "A spare") => new(
        code, title, "lark-2",
        new Donor("la", "2017-04", 41206, "380.00", [new DonorState("front-bush", PartState.NotInspected, "20.00", "5.00", "lark-2/it-1", "dirty")]),
        "lb", "EUR")
    {
        Note = "two\nlines",
        Goal = new BuildGoal("180 kW", "6800/min", "1.1 bar", "3.0 bar", "return-manifold", "85 %", "petrol-e5"),
        Wishes =
        [
            new Wish("front-bush", null)
            {
                Like = ["lb"], Refuse = ["tessick:B-1"], Keep = KeepWish.KeepIfPossible, OnlyNew = true, AdmitNotKnown = true, Note = "if it goes",
            },
            new Wish(null, "bottom-end") { Parts = ["none"] },
        ],
        AdmitNotKnown = true,
        InHand = [new HeldPart("tessick:B-1", 2, "in the drawer")],
        Works = [new AskedWork("hone-bores", "front-bush", null)],
        RefusedSellers = ["fenmoor"],
        Rates = [new Rate("GBP", "1.1700", "the bank")],
        Budget = "3500.00",
        NeededBy = "2026-12-24",
        StartOn = "2026-12-01",
        OffersAtMostDaysOld = 60,
        DaysWhereNotSaid = 10,
        SendingWhereNotSaid = "12.00",
        ImportPercentWhereNotSaid = 22.5m,
    };

    public static Build Read(string document)
    {
        var reading = BuildDocument.Read(Encoding.UTF8.GetBytes(document));
        Assert.True(reading is BuildReading.Read, reading is BuildReading.Faulty faulty ? string.Join('\n', faulty.Faults) : reading.ToString());
        return ((BuildReading.Read)reading).Build;
    }

    /// <summary>The faults of a document, each as field, what was found and what was expected.</summary>
    public static IReadOnlyList<DocumentFault> Faults(string document) =>
        Assert.IsType<BuildReading.Faulty>(BuildDocument.Read(Encoding.UTF8.GetBytes(document))).Faults;
}
