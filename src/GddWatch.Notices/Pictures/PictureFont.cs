using ScottPlot;
using SkiaSharp;

namespace GddWatch.Notices.Pictures;

/// <summary>
/// The font of all pictures: DejaVu Sans, which lies inside the program, so that a picture has the same text on every machine, fonts installed or not. Without a font the drawing library
/// leaves all text out and says nothing: ask <see cref="IsThere"/> first, and draw no picture where it is not.
/// </summary>
public static class PictureFont
{
    /// <summary>The font's name, as the drawing library asks for it.</summary>
    public const string Name = "DejaVu Sans";

    /// <summary>The signs that a chart cannot do without.</summary>
    private const string Needed = "0123456789 ABCXYZabcxyz°F°C%±.,:-–";

    private static readonly Lazy<bool> MadeKnown = new(MakeKnown);

    /// <summary>Whether text can be drawn.</summary>
    public static bool IsThere => MadeKnown.Value;

    /// <summary>Sets the font of all text of a plot.</summary>
    /// <exception cref="InvalidOperationException">There is no font; see <see cref="IsThere"/>.</exception>
    public static void Use(Plot plot)
    {
        ArgumentNullException.ThrowIfNull(plot);
        if (!IsThere) throw new InvalidOperationException($"The font {Name} could not be read from the program; without it a picture would have no text.");
        plot.Font.Set(Name);
    }

    private static bool MakeKnown()
    {
        using Stream? file = typeof(PictureFont).Assembly.GetManifestResourceStream("DejaVuSans.ttf");
        if (file is null) return false;
        var resolver = new OwnFont(SKData.Create(file));
        using SKTypeface? typeface = resolver.CreateTypeface(Name, FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal);
        if (typeface is null || !typeface.ContainsGlyphs(Needed)) return false;
        // Before those that look for fonts of the machine, which may be of another version or none.
        Fonts.FontResolvers.Insert(0, resolver);
        return true;
    }

    /// <summary>Gives the one face for every weight and slant of the font.</summary>
    private sealed class OwnFont(SKData data) : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            string.Equals(fontName, Name, StringComparison.OrdinalIgnoreCase) ? SKTypeface.FromData(data) : null;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => CreateTypeface(fontName, FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal);
    }
}
