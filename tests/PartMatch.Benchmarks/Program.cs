using BenchmarkDotNet.Running;

// dotnet run -c Release --project tests/PartMatch.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
