using System.Reflection;
using System.Text.Json;
using System.Xml.Linq;
using NetArchTest.Rules;
using PartMatch.Core.Catalogue;
using PartMatch.Storage;

namespace PartMatch.Web.Tests;

/// <summary>The walls between the three projects.</summary>
public sealed class WallsTests
{
    private static readonly Assembly _web = typeof(Program).Assembly;
    private static readonly Assembly _core = typeof(Family).Assembly;

    [Theory]
    [InlineData("Dapper")]
    [InlineData("Microsoft.Data.Sqlite")]
    [InlineData("nietras.SeparatedValues")]
    public void Web_and_core_know_no_database_and_no_csv(string library)
    {
        foreach (var assembly in new[] { _web, _core })
        {
            var result = Types.InAssembly(assembly).ShouldNot().HaveDependencyOnAny(library).GetResult();
            Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
        }
    }

    [Fact]
    public void Core_knows_neither_storage_nor_web()
    {
        var result = Types.InAssembly(_core).ShouldNot().HaveDependencyOnAny("PartMatch.Storage", "PartMatch.Web", "Microsoft.AspNetCore").GetResult();

        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
        Assert.DoesNotContain(typeof(Database).Assembly.GetReferencedAssemblies(), name => name.Name == "PartMatch.Web");
    }

    /// <summary>The compiler of Web is not even given the libraries: whoever names one there gets an error.</summary>
    [Theory]
    [InlineData("Dapper")]
    [InlineData("Microsoft.Data.Sqlite")]
    [InlineData("Sep")]
    public void Storage_keeps_its_libraries_from_the_compiler_of_web(string library)
    {
        var storage = XDocument.Load(Path.Combine(Repository.Folder, "src", "PartMatch.Storage", "PartMatch.Storage.csproj"));
        var reference = storage.Descendants("PackageReference").Single(item => item.Attribute("Include")?.Value == library);
        Assert.Equal("compile", reference.Attribute("PrivateAssets")?.Value);

        // What the restore gave the compiler of Web: a library that is only there at run time has an empty placeholder.
        var assets = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Folder, "src", "PartMatch.Web", "obj", "project.assets.json")));
        var targets = assets.RootElement.GetProperty("targets").EnumerateObject().First().Value.EnumerateObject();
        var entry = targets.Single(target => target.Name.StartsWith($"{library}/", StringComparison.Ordinal)).Value;
        Assert.DoesNotContain(entry.TryGetProperty("compile", out var compile) ? compile.EnumerateObject() : [], file =>
            file.Name.EndsWith(".dll", StringComparison.Ordinal));
        Assert.DoesNotContain(_web.GetReferencedAssemblies(), name => name.Name == library);
    }

    /// <summary>The parsers of listings are named in one file each, the solver of plans in two, and nobody outside Core can name them.</summary>
    [Theory]
    [InlineData("AngleSharp", "ListingReader.cs")]
    [InlineData("MimeKit", "SavedPage.cs")]
    [InlineData("Google.OrTools", "ConstraintModel.cs", "LinearRelaxation.cs", "SolverReports.cs")]
    public void Few_files_of_core_name_a_library(string library, params string[] files)
    {
        var core = Path.Combine(Repository.Folder, "src", "PartMatch.Core");
        var naming = Directory.EnumerateFiles(core, "*.cs", SearchOption.AllDirectories)
            .Where(path => File.ReadLines(path).Any(line => line.StartsWith($"using {library}", StringComparison.Ordinal)
            || line.Contains($" {library}.", StringComparison.Ordinal)))
            .Select(Path.GetFileName)
            .Order(StringComparer.Ordinal);
        Assert.Equal(files, naming);

        var project = XDocument.Load(Path.Combine(core, "PartMatch.Core.csproj"));
        var reference = project.Descendants("PackageReference").Single(item => item.Attribute("Include")?.Value == library);
        Assert.Equal("compile", reference.Attribute("PrivateAssets")?.Value);
        Assert.DoesNotContain(_web.GetReferencedAssemblies(), name => name.Name == library);
    }

    [Fact]
    public void The_output_holds_the_solver_of_one_system()
    {
        var natives = Directory.EnumerateFiles(AppContext.BaseDirectory, "*google-ortools-native*", SearchOption.AllDirectories);
        Assert.Single(natives);
    }

    [Fact]
    public void The_banned_symbols_of_core_are_an_error_of_its_build()
    {
        var project = XDocument.Load(Path.Combine(Repository.Folder, "src", "PartMatch.Core", "PartMatch.Core.csproj"));
        Assert.Contains(project.Descendants("AdditionalFiles"), item => item.Attribute("Include")?.Value == "BannedSymbols.txt");
        Assert.Contains(project.Descendants("PackageReference"), item => item.Attribute("Include")?.Value == "Microsoft.CodeAnalysis.BannedApiAnalyzers");

        // RS0030 is a warning by default; warnings are errors here, and nothing takes this one out.
        var properties = XDocument.Load(Path.Combine(Repository.Folder, "Directory.Build.props"));
        Assert.Equal("true", properties.Descendants("TreatWarningsAsErrors").Single().Value);
        foreach (var file in new[] { "Directory.Build.props", ".editorconfig", "src/PartMatch.Core/PartMatch.Core.csproj" })
        {
            Assert.DoesNotContain("RS0030", File.ReadAllText(Path.Combine(Repository.Folder, file)), StringComparison.Ordinal);
        }

        var banned = File.ReadAllLines(Path.Combine(Repository.Folder, "src", "PartMatch.Core", "BannedSymbols.txt"));
        foreach (var type in new[] { "System.DateTime", "System.IO.File", "System.Random", "System.Environment", "System.Net.Http.HttpClient" })
        {
            Assert.Contains(banned, line => line.StartsWith($"T:{type};", StringComparison.Ordinal));
        }
    }
}
