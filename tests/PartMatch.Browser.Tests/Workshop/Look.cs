using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>In which window, colours and medium a page is seen.</summary>
/// <param name="Name">Also the end of its picture's file name.</param>
/// <param name="Width">Of the window, CSS pixels.</param>
public sealed record Look(string Name, int Width, int Height, ColorScheme Colours, Media Medium)
{
    public static Look Light { get; } = new("light", 1200, 900, ColorScheme.Light, Media.Screen);

    public static Look Dark { get; } = new("dark", 1200, 900, ColorScheme.Dark, Media.Screen);

    /// <summary>The narrowest telephone that the pages promise to work on.</summary>
    public static Look Phone { get; } = new("360", 360, 640, ColorScheme.Light, Media.Screen);

    public static Look PhoneDark { get; } = new("360-dark", 360, 640, ColorScheme.Dark, Media.Screen);

    /// <summary>A4 less 15 mm margins at 96 px to the inch: 180 mm = 680 px.</summary>
    public static Look Print { get; } = new("print", 680, 960, ColorScheme.Light, Media.Print);

    public static IReadOnlyList<Look> All { get; } = [Light, Dark, Phone, PhoneDark, Print];
}
