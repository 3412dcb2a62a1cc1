using PartMatch.Web.Tests;

[assembly: AssemblyFixture(typeof(SmallBase))]
