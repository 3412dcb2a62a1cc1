using Microsoft.Extensions.DependencyInjection;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Measures;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;

namespace PartMatch.Web.Tests.Seed;

/// <summary>What the demo books hold of findings, single examples, wear and sellers.</summary>
public sealed class EvidenceSeedTests(SeedServer server)
{
    private static readonly string[] _families = ["hs-2", "tern-16"];

    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public void The_findings_are_of_every_grade_and_outcome_and_some_are_retracted_or_copied()
    {
        Finding[] all = [.. _families.SelectMany(family => FactsOf(family).Findings)];

        Assert.True(all.Length >= 40, $"{all.Length} findings");
        Assert.All(_families, family => Assert.NotEmpty(FactsOf(family).Findings));
        Assert.Equal(Enum.GetValues<EvidenceGrade>().ToHashSet(), all.Select(finding => finding.Evidence.Grade).ToHashSet());
        Assert.Equal(Enum.GetValues<FindingOutcome>().ToHashSet(), all.Select(finding => finding.Outcome).ToHashSet());
        Assert.True(all.Count(finding => finding.Evidence is { IsRetracted: true, RetractedWhy: not null }) >= 4);
        Assert.Contains(all, finding => finding.With.Count > 1);
        Assert.Contains(all, finding => finding.Span.SerialTo is not null);
        Assert.Contains(all, finding => finding.Span.BuiltTo is not null);
        Assert.Contains(all, finding => finding.Part == Part.None);

        // The hot sport engine: a bench sheet, a message that quotes it, a list that quotes the message. One source under three findings.
        Assert.Contains(FactsOf("tern-16").Findings.GroupBy(finding => finding.Evidence.Root), source => source.Count(finding => finding.Evidence.IsCopy) >= 2);
    }

    [Fact]
    public async Task Every_finding_is_shown_with_the_question_it_is_about_and_several_answers_are_disputed()
    {
        var disputed = new HashSet<string>();
        foreach (var family in _families)
        {
            foreach (var finding in FactsOf(family).Findings)
            {
                var with = string.Concat(finding.With.Select(pair => $"&with={pair.Key}%3D{pair.Value ?? Part.None}"));
                var place = $"family={family}&variant={finding.Variant}&position={finding.Position}";
                var answer = await _client.AskAsync($"/api/fit?{place}&part={finding.Part}{with}");

                Assert.Contains(finding.Code, answer.List("findings").Select(shown => shown.Text("code")));
                if (answer.GetProperty("mounts").GetProperty("disputed").GetBoolean() || answer.GetProperty("runs").GetProperty("disputed").GetBoolean())
                {
                    disputed.Add($"{family} {finding.Variant} {finding.Position} {finding.Part}");
                }
            }
        }

        Assert.True(disputed.Count >= 2, $"disputed: {string.Join("; ", disputed)}");
    }

    // Held against limits.csv by hand: reading ± uncertainty wholly inside, wholly outside, over the end, or a limit of the kind not read at all.
    [Theory]
    [InlineData("tern-16", "it-0001", ItemCondition.WithinLimits)] // journals, nose and thrust width all read and kept
    [InlineData("tern-16", "it-0004", ItemCondition.BeyondLimits)] // 151.92 ± 0.01, at least 151.95: bent
    [InlineData("tern-16", "it-0005", ItemCondition.NotInspected)] // length not read
    [InlineData("tern-16", "it-0012", ItemCondition.NotInspected)] // 5.942 ± 0.004, at least 5.940: straddles
    [InlineData("tern-16", "it-0013", ItemCondition.BeyondLimits)] // 4.2 ± 0.1, at least 4.5
    [InlineData("tern-16", "it-0017", ItemCondition.BeyondLimits)] // 51.968 ± 0.002, at least 51.974; the rest not read
    [InlineData("tern-16", "it-0018", ItemCondition.NotInspected)] // nose and thrust faces in grease
    [InlineData("hs-2", "it-0001", ItemCondition.WithinLimits)]
    [InlineData("tern-16", "it-0010", ItemCondition.WithinLimits)] // 44.1 ± 0.1, for this spring at least 43.8
    [InlineData("hs-2", "it-0005", ItemCondition.BeyondLimits)] // a worn lobe: 35.96 ± 0.01, for this number at least 36.00
    [InlineData("hs-2", "it-0006", ItemCondition.BeyondLimits)] // 16.082 ± 0.005, at most 16.060
    public void An_item_stands_to_its_limits_as_worked_out_by_hand(string family, string code, ItemCondition expected) =>
        Assert.Equal(expected, Decide(family, code).Condition);

    [Theory]
    [InlineData("tern-16", "it-0001", "big-end-shell", "pellworth:P-11-2101-B")] // 44.984 ± 0.002 in 44.981 to 44.987
    [InlineData("tern-16", "it-0001", "thrust-washer", "pellworth:P-11-2231-A")] // 27.24 ± 0.005 in 27.15 to 27.25
    [InlineData("tern-16", "it-0007", "tappet", "pellworth:P-12-6330-A")] // 3.515 ± 0.015 in 3.49 to 3.54
    [InlineData("hs-2", "it-0001", "end-shim", "harrow-stane:H-11-8988-E")] // 1.131 ± 0.005 in 1.105 to 1.155
    public void A_reading_chooses_the_graded_part(string family, string code, string position, string part) =>
        Assert.Equal([part], Assert.Single(Decide(family, code).Grades, grade => grade.Position == position).Parts);

    [Fact]
    public void A_donor_was_opened_and_measured()
    {
        var items = server.Services.GetRequiredService<ItemStore>().List("tern-16");

        Assert.True(items.Count(item => item.Origin == ItemOrigin.Donor && item.Readings.Count > 0) >= 12);
        Assert.Contains(items, item => item.Origin == ItemOrigin.YardPull);
        Assert.Contains(items, item => item.Origin == ItemOrigin.Arrival);
        Assert.Contains(items, item => item.WorksDone.Count > 0);
        Assert.All(items, item => Assert.Equal(SpeaksOf.Item, item.Evidence?.Details?.SpeaksOf));
        Assert.All(
            items.SelectMany(item => item.Readings),
            reading => Assert.True(reading.Reading is not QuantityReading { Uncertainty: null }, reading.Feature));
    }

    [Theory]
    [InlineData("tern-16", 20)]
    [InlineData("hs-2", 15)]
    public void Every_new_part_keeps_its_limits(string family, int atLeast)
    {
        var facts = FactsOf(family);

        Assert.True(facts.Limits.Count >= atLeast, $"{facts.Limits.Count} limits");
        Assert.All(facts.Limits, limit =>
        {
            QuantityReading[] values =
            [
                .. facts.PartsOfKind(limit.Kind).Where(part => limit.Part is null || part.Id == limit.Part).SelectMany(part => part.Values)
                    .Where(value => value.Feature == limit.Feature && value.Evidence?.IsRetracted != true)
                    .Select(value => value.Reading).OfType<QuantityReading>(),
            ];
            Assert.NotEmpty(values);
            Assert.All(values, value => Assert.True(Widest(value).LiesIn(limit.Band), $"{limit.Kind}.{limit.Feature}: {value.Text}"));
        });
    }

    // Lobes of 41.8 and 45.6: one number for the kind would pass a worn 45.6 or condemn a new 41.8. So each number has its own.
    [Theory]
    [InlineData("tern-16", "intake-camshaft", "base-to-lobe-height")]
    [InlineData("tern-16", "valve-spring", "free-length")]
    [InlineData("hs-2", "geared-camshaft", "base-to-lobe-height")]
    public void Where_parts_of_a_kind_differ_when_new_each_has_its_own_limit(string family, string kind, string feature)
    {
        var limits = FactsOf(family).Limits.Where(limit => limit.Kind == kind && limit.Feature == feature).ToList();

        Assert.True(limits.Count >= 3, $"{limits.Count} limits");
        Assert.DoesNotContain(null, limits.Select(limit => limit.Part));
    }

    [Fact]
    public async Task Sellers_send_from_several_countries_in_several_currencies()
    {
        var sellers = (await _client.AskAsync("/api/books/common/sellers")).List("rows").Select(row => row.GetProperty("row")).ToList();

        Assert.True(sellers.Count >= 6, $"{sellers.Count} sellers");
        Assert.True(sellers.Select(row => row.Text("currency")).Distinct().Count() >= 2);
        Assert.True(sellers.Select(row => row.Text("country")).Distinct().Count() >= 2);
    }

    private static Interval Widest(QuantityReading value) =>
        new(value.Value - (value.Minus ?? 0) - (value.Uncertainty ?? 0), value.Value + (value.Plus ?? 0) + (value.Uncertainty ?? 0));

    private ItemAnswer Decide(string family, string code)
    {
        var facts = FactsOf(family);
        var item = server.Services.GetRequiredService<ItemStore>().Find(family, code);
        Assert.NotNull(item);
        var part = facts.Parts.Single(part => part.Id == item.Part);
        return ItemCheck.Decide(facts, facts.GetKind(part.Kind), facts.Limits, part, item, facts.Selects);
    }

    private FamilyFacts FactsOf(string family)
    {
        var facts = server.Services.GetRequiredService<FamilyStore>().FindFamily(family);
        Assert.NotNull(facts);
        return facts;
    }
}
