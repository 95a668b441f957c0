namespace Ohmstead.Storage.Zips;

/// <summary>What is too much for a zip that somebody sends. A zip of this tool stays far below.</summary>
/// <param name="MostFiles">A workshop of many years has some 20,000 photos.</param>
/// <param name="MostTextBytes">One journal or document [bytes]; a busy journal has 1 MB.</param>
/// <param name="MostPhotoBytes">One photo [bytes].</param>
/// <param name="MostRatio">Unpacked size over packed, of one file and of all; journals reach some 30.</param>
public sealed record ZipLimits(
    int MostFiles = 200_000,
    int MostTextBytes = 64_000_000,
    int MostPhotoBytes = 64_000_000,
    int MostRatio = 200
);
