namespace PartMatch.Core.Photos;

public enum PhotoFormat
{
    Jpeg,
    Png,
}

/// <summary>A picture that holds what is needed to show it, upright, and nothing that tells of who took it, where, when or with what.</summary>
/// <param name="Width">Pixels across, as it is shown: a picture that was taken with the camera on its side is already turned.</param>
/// <param name="Height">Pixels down, as it is shown.</param>
/// <param name="Bytes">The whole file.</param>
public sealed record Photo(PhotoFormat Format, int Width, int Height, ReadOnlyMemory<byte> Bytes);

/// <summary>What came of reading a picture: <see cref="PhotoRead"/> or <see cref="PhotoRefused"/>.</summary>
public abstract record PhotoOutcome;

public sealed record PhotoRead(Photo Photo) : PhotoOutcome;

/// <summary>Not taken: what was found, what was expected, how to mend it.</summary>
public sealed record PhotoRefused(PhotoFault Fault, string Found, string Expected, string Mend) : PhotoOutcome;

/// <summary>Why a picture is not taken.</summary>
public enum PhotoFault
{
    /// <summary>There are no bytes.</summary>
    Empty,

    /// <summary>More bytes than are kept.</summary>
    TooLarge,

    /// <summary>More pixels than are shown without trouble.</summary>
    TooManyPixels,

    /// <summary>Another format, known or not.</summary>
    OtherFormat,

    /// <summary>The right format in a form that browsers do not show.</summary>
    OtherForm,

    /// <summary>The end is missing.</summary>
    CutShort,

    /// <summary>It contradicts itself or its format.</summary>
    Damaged,
}
