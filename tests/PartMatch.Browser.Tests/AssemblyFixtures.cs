using PartMatch.Browser.Tests.Workshop;

[assembly: AssemblyFixture(typeof(Bench))]
