using PartMatch.Web.Tests;
using PartMatch.Web.Tests.Seed;

[assembly: AssemblyFixture(typeof(SmallBase))]
[assembly: AssemblyFixture(typeof(SeedServer))]
