using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Will it fit: the van's coolant pump on the sport engine, which bolts on and turns the water the wrong way.</summary>
public sealed class FitPageTests(Bench bench) : PageTests(bench, "fit.html", new Dictionary<string, string>
{
    ["misfit"] = Pump,
    ["stack"] = "fit.html?family=tern-16&variant=tv&position=flywheel-bolt&part=P-13-0420-A",
    ["work"] = "fit.html?family=tern-16&variant=ts&position=cylinder-block&part=P-10-2202-A",
    ["spans"] = "fit.html?family=tern-16&variant=tv&position=crank-sensor&part=P-18-0410-A",
    ["changes"] = "fit.html?family=tern-16&variant=tg&position=intake-camshaft&from=ts",
    ["unknown"] = "fit.html?family=tern-16&variant=tv&position=coolant-pump&part=P-26-1174-Z",
})
{
    private const string Pump = "fit.html?family=tern-16&variant=ts&position=coolant-pump&part=P-26-1147-C";
}
