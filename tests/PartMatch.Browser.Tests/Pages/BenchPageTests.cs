using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The bench sheet as it is read; filling it in is in <see cref="BenchEntryTests"/>.</summary>
public sealed class BenchPageTests(Bench bench) : PageTests(
    bench, "bench.html", ("begin", "bench.html?family=tern-16"), ("variant", "bench.html?family=tern-16&variant=tg"),
    ("position", "bench.html?family=tern-16&variant=tg&position=crank-damper"), ("none", "bench.html?family=tern-16&variant=tg&position=accessory-belt"));
