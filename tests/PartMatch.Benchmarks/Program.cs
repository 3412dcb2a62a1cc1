using System.Globalization;
using BenchmarkDotNet.Running;
using PartMatch.Benchmarks.Numbers;
using PartMatch.Benchmarks.Planning;

// dotnet run -c Release --project tests/PartMatch.Benchmarks -- --filter '*'
// dotnet run -c Release --project tests/PartMatch.Benchmarks -- warehouses cap71.txt …
// dotnet run -c Release --project tests/PartMatch.Benchmarks -- plans demo.db
// dotnet run -c Release --project tests/PartMatch.Benchmarks -- near dense | shaped | dense5
// … -- pairs dense | dense-tenth, … -- book dense list.zip, … -- import list.zip large.db, … -- http dense large.db
if (args is ["warehouses", .. var files])
{
    Warehouses.Show(files);
}
else if (args is ["plans", var demo])
{
    DemoPlans.Show(demo);
}
else if (args is ["near", var set, ..])
{
    NearKeysAtScale.Show(set, withPeers: args is not [.., "alone"]);
}
else if (args is ["pairs", var pairsOf])
{
    PairsAtScale.Show(pairsOf);
}
else if (args is ["http", var asked, var largeBase])
{
    await NearOverHttp.ShowAsync(asked, largeBase);
}
else if (args is ["book", var list, var zip, .. var most])
{
    ImportAtScale.Write(list, zip, most is [var parts] ? int.Parse(parts, CultureInfo.InvariantCulture) : int.MaxValue);
}
else if (args is ["import", var book, var path])
{
    ImportAtScale.Show(book, path);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(KeySet).Assembly).Run(args);
}
