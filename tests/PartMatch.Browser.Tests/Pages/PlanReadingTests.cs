using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>How a plan, or why there is none, is shown to somebody about to pay: with answers of its own, so that each says what is looked for.</summary>
public sealed class PlanReadingTests(Bench bench)
{
    private const string Asked = "\"asked\":{\"build\":\"hill-climb\",\"version\":1,\"objective\":\"cheapest\",\"startOn\":\"2026-06-01\"}";

    private const string Plan = $$"""
        {{{Asked}},"status":"proven-optimal","headlineText":"No plan is cheaper: 62.00 EUR.","days":3,"readyOn":"2026-06-04","sureness":"documented",
        "cost":{"total":{"amount":"62.00","currency":"EUR"},"cheapest":{"amount":"62.00","currency":"EUR"},"goods":{"amount":"62.00","currency":"EUR"},"text":"62.00 goods = 62.00 EUR"},
        "lines":[{"position":"tappet","name":"graded tappets","group":"valve-gear","action":"replace","actionText":"Replace","oneOf":["pellworth:T-1","pellworth:T-2"],"pieces":12,
        "because":"graded","headline":"fits","sureness":"documented","unproven":false,"cost":{"amount":"48.00","currency":"EUR"},"donorHas":"pellworth:T-0","works":[],
        "buy":[{"offer":"tern-16/of-1","seller":"millrace","numberAsWritten":"T 1","packs":12,"pieces":12,"price":{"amount":"4.00","currency":"EUR"},"arrivesOn":"2026-06-04"}],
        "reference":"","flags":["measure, then order"],"fit":""},
        {"position":"head-bolt","name":"head bolts","group":"head","action":"replace","actionText":"Replace","part":"pellworth:B-7","oneOf":[],"pieces":8,"because":"stretched",
        "headline":"fits","sureness":"documented","unproven":false,"cost":{"amount":"9.00","currency":"EUR"},"donorHas":"pellworth:B-6","works":[],
        "buy":[{"offer":"tern-16/of-2","seller":"millrace","numberAsWritten":"K 90 3","packs":1,"pieces":8,"price":{"amount":"9.00","currency":"EUR"},"arrivesOn":"2026-06-02"}],
        "reference":"","flags":[],"fit":""},
        {"position":"oil-filter","name":"oil filter","group":"oil","action":"replace","actionText":"Replace","part":"pellworth:F-2","oneOf":[],"pieces":1,"because":"worn",
        "headline":"fits","sureness":"documented","unproven":false,"cost":{"amount":"5.00","currency":"EUR"},"donorHas":"pellworth:F-1","works":[],
        "buy":[{"offer":"tern-16/of-3","seller":"millrace","numberAsWritten":"F-2","packs":1,"pieces":1,"price":{"amount":"5.00","currency":"EUR"},"arrivesOn":"2026-06-02"}],
        "reference":"","flags":[],"fit":""},
        {"position":"service-fuel","name":"service: fuel","group":"services","action":"keep","actionText":"As declared","oneOf":[],"because":"declared","headline":"fits",
        "sureness":"documented","unproven":false,"works":[],"buy":[],"reference":"","flags":[],"fit":""}],
        "baskets":[{"seller":"common/millrace","name":"Millrace Breakers","items":[
        {"offer":"tern-16/of-1","part":"pellworth:T-1","numberAsWritten":"T 1","name":"Tappet","packs":12,"price":{"amount":"4.00","currency":"EUR"},
        "converted":{"amount":"4.00","currency":"EUR"},"total":{"amount":"48.00","currency":"EUR"},"seenOn":"2026-05-01","arrivesOn":"2026-06-04","for":["tappet"],
        "flags":["measure first, do not order yet: graded tappets will be one of T-1, T-2","condition not stated: ask"]},
        {"offer":"tern-16/of-2","part":"pellworth:B-7","numberAsWritten":"K 90 3","name":"Head bolt","packs":1,"piecesInPack":8,"price":{"amount":"9.00","currency":"EUR"},
        "converted":{"amount":"9.00","currency":"EUR"},"total":{"amount":"9.00","currency":"EUR"},"seenOn":"2026-05-01","arrivesOn":"2026-06-02","for":["head-bolt"],"flags":[]},
        {"offer":"tern-16/of-3","part":"pellworth:F-2","numberAsWritten":"F-2","name":"Oil filter","packs":1,"price":{"amount":"5.00","currency":"EUR"},
        "converted":{"amount":"5.00","currency":"EUR"},"total":{"amount":"5.00","currency":"EUR"},"seenOn":"2026-05-01","arrivesOn":"2026-06-02","for":["oil-filter"],"flags":[]}],
        "goods":{"amount":"62.00","currency":"EUR"},"import":{"amount":"0.00","currency":"EUR"},"sending":{"amount":"0.00","currency":"EUR"},"sendingText":"nothing",
        "total":{"amount":"62.00","currency":"EUR"},"arrivesOn":"2026-06-04"}],
        "works":[],"leftOver":[],"onTrust":[],"notWeighed":[],"cautions":[],
        "flags":["9 kept parts are not inspected","the block stays for 40.00 EUR more"],"permalink":"/api/builds/hill-climb/plan"}
        """;

    private const string NoPlan = $$"""
        {{{Asked}},"status":"infeasible","headlineText":"No plan holds all of your wishes: see what conflicts.",
        "lines":[],"baskets":[],"works":[],"leftOver":[],"onTrust":[],"notWeighed":[],"flags":[],"cautions":[],"permalink":"/api/builds/hill-climb/plan"}
        """;

    private const string Conflict = $$"""
        {{{Asked}},"status":"infeasible","headlineText":"One thing keeps every plan away, and there are 3 other conflicts behind it.","permalink":"/api/builds/hill-climb/conflict",
        "members":[{"wish":"obtainable:piston","text":"Pistons: something that fits has to be there.","mend":"find K-1"}],
        "further":[{"members":[{"wish":"obtainable:oil-filter","text":"Oil filter: something that fits has to be there.","mend":"find K-2"}]},
        {"members":[{"wish":"obtainable:crankshaft","text":"Crankshaft: something that fits has to be there.","mend":"find K-3"},
        {"wish":"budget","text":"the whole may cost 50.00 EUR at most","mend":"raise the budget to 90.00 EUR"}]},
        {"members":[{"wish":"obtainable:sump","text":"Sump: something that fits has to be there.","mend":"find K-4"}]}]}
        """;

    [Fact]
    public async Task What_has_to_be_read_before_money_is_spent_stands_between_the_sum_and_everything_else()
    {
        await using var sheet = await OpenAsync();
        var list = sheet.Page.Locator(".headline .before-money");
        await Assertions.Expect(list.GetByRole(AriaRole.Heading)).ToHaveTextAsync("Before you spend money");
        await Assertions.Expect(list.GetByRole(AriaRole.Listitem)).ToHaveTextAsync(["9 kept parts are not inspected.", "The block stays for 40.00 EUR more."]);
        await Assertions.Expect(sheet.Page.Locator(".headline > .why + .before-money")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("3 positions of the engine. Not counted: 1 service (what it is used for and fed with).");
        await sheet.AssertUsableAsync("build-before-money");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Only_where_the_seller_writes_another_number_it_stands_beside_the_part()
    {
        await using var sheet = await OpenAsync();
        await Assertions.Expect(sheet.Page.Locator(".basket tr").Filter(new() { HasText = "Head bolt" })).ToContainTextAsync("listed as K 90 3");
        await Assertions.Expect(sheet.Page.Locator("tr[data-position=head-bolt]")).ToContainTextAsync("listed as K 90 3");
        await Assertions.Expect(sheet.Page.Locator(".basket tr").Filter(new() { HasText = "Oil filter" })).Not.ToContainTextAsync("listed as");
        await Assertions.Expect(sheet.Page.Locator("tr[data-position=oil-filter]")).Not.ToContainTextAsync("listed as");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_is_measured_before_it_is_ordered_says_so_at_the_part_in_the_order_list()
    {
        await using var sheet = await OpenAsync();
        var waiting = sheet.Page.Locator(".basket tr.not-yet");
        await Assertions.Expect(waiting).ToHaveCountAsync(1);
        await Assertions.Expect(waiting.GetByRole(AriaRole.Rowheader)).ToContainTextAsync("Measure first, do not order yet: graded tappets will be one of T-1, T-2.");
        await Assertions.Expect(waiting.Locator("td").Last).ToHaveTextAsync("Condition not stated: ask.");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_order_list_alone_goes_to_paper_and_the_page_is_whole_again_afterwards()
    {
        await using var sheet = await OpenAsync();
        await sheet.Page.EvaluateAsync("() => { window.print = () => {}; }");
        await sheet.PressAsync("Print the order list");
        await sheet.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(sheet.Page.Locator(".basket h3")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToBeHiddenAsync();
        await Assertions.Expect(sheet.Page.Locator(".plan-lines").First).ToBeHiddenAsync();
        await Assertions.Expect(sheet.Page.GetByText("What to order for the plan of 2026-06-01, version 1.")).ToBeVisibleAsync();
        await sheet.Page.EvaluateAsync("window.dispatchEvent(new Event('afterprint'))");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Every_conflict_behind_the_first_is_shown_those_of_one_member_as_one_list()
    {
        await using var sheet = await OpenAsync(NoPlan);
        await Assertions.Expect(sheet.Page.Locator(".conflicting tr[data-wish]")).ToHaveCountAsync(1);
        var behind = sheet.Page.Locator(".behind");
        await Assertions.Expect(behind.GetByRole(AriaRole.Heading)).ToHaveTextAsync("And behind it");
        await Assertions.Expect(behind).ToContainTextAsync("3 conflicts still keep every plan away");
        await Assertions.Expect(behind.GetByRole(AriaRole.Table)).ToHaveCountAsync(1);
        await Assertions.Expect(behind.Locator("tbody tr")).ToHaveTextAsync(
        [
            "Each of these has to be mended", "Oil filterFind K-2.", "SumpFind K-4.", "One of these 2 has to be mended", "CrankshaftFind K-3.",
            "The whole may cost 50.00 EUR at most.Raise the budget to 90.00 EUR.",
        ]);
        await sheet.AssertUsableAsync("build-conflicts-behind");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_address_with_a_line_arrives_at_what_is_asked_about_it()
    {
        Chromium.MustBeThere();
        await bench.ReckonAsync("/api/builds/hill-climb/plan");
        await using var sheet = await bench.OpenAsync("build.html?build=hill-climb&objective=cheapest&line=oil-filter");
        await sheet.SettleAsync();
        var title = sheet.Page.GetByRole(AriaRole.Heading, new() { Name = "Oil filter: why this?" });
        await Assertions.Expect(title).ToBeFocusedAsync();
        await Assertions.Expect(title).ToBeInViewportAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_the_build_does_not_state_stands_before_what_conflicts()
    {
        const string Stated = """
            "notStated":[{"field":"rates","offers":12,"text":"12 offers do not count, in GBP, for which there is no rate: say how much 1 GBP is in EUR."},
            {"field":"daysWhereNotSaid","offers":1,"text":"1 offer does not count, of sellers who do not say how long it takes: say how many days to reckon where it is not said."}],
            """;
        await using var sheet = await OpenAsync(NoPlan, Conflict.Replace("\"members\":[{\"wish\":\"obtainable:piston\"", Stated + "\"members\":[{\"wish\":\"obtainable:piston\"", StringComparison.Ordinal));
        var said = sheet.Page.Locator(".not-stated");
        await Assertions.Expect(said.Locator("strong")).ToHaveTextAsync("The build does not say enough for these to count.");
        await Assertions.Expect(said.GetByRole(AriaRole.Listitem)).ToHaveTextAsync(
        [
            "12 offers do not count, in GBP, for which there is no rate: say how much 1 GBP is in EUR.",
            "1 offer does not count, of sellers who do not say how long it takes: say how many days to reckon where it is not said.",
        ]);
        await Assertions.Expect(sheet.Page.Locator("h2 + .not-stated")).ToBeVisibleAsync();
        await sheet.AssertUsableAsync("build-not-stated");
        sheet.AssertQuiet();
    }

    [Theory]
    [InlineData("")]
    [InlineData("\"notStated\":[],")]
    public async Task Nothing_is_said_of_what_is_not_stated_where_all_is(string stated)
    {
        var conflict = Conflict.Replace("\"members\":[{\"wish\":\"obtainable:piston\"", stated + "\"members\":[{\"wish\":\"obtainable:piston\"", StringComparison.Ordinal);
        await using var sheet = await OpenAsync(NoPlan, conflict);
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Heading, new() { Name = "What conflicts", Exact = true }).First).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".not-stated")).ToHaveCountAsync(0);
        sheet.AssertQuiet();
    }

    private async Task<Sheet> OpenAsync(string plan = Plan, string conflict = Conflict)
    {
        Chromium.MustBeThere();
        var sheet = await bench.OpenAsync("build.html?build=hill-climb");
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/plan?*", route => route.FulfillAsync(new()
        {
            ContentType = "application/jsonl",
            Body = plan.ReplaceLineEndings(""),
        }));
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/conflict?*", route => route.FulfillAsync(new() { ContentType = "application/json", Body = conflict.ReplaceLineEndings("") }));
        await sheet.PressAsync("Plan it");
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToBeFocusedAsync();
        return sheet;
    }
}
