using BenchmarkDotNet.Running;
using PartMatch.Benchmarks.Planning;

// dotnet run -c Release --project tests/PartMatch.Benchmarks -- --filter '*'
// dotnet run -c Release --project tests/PartMatch.Benchmarks -- warehouses cap71.txt …
if (args is ["warehouses", .. var files])
{
    Warehouses.Show(files);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
