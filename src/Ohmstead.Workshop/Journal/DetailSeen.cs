namespace Ohmstead.Workshop.Journal;

/// <summary>What a unit shows of a detail that dates it; of one detail the last entry counts.</summary>
/// <param name="Detail">Key of the detail among those of its type.</param>
/// <param name="Shows">Key of the variant; <see cref="Another"/>, <see cref="CannotTell"/>, or empty where the answer was taken back.</param>
/// <param name="Title">What the detail was called then.</param>
/// <param name="Words">What the variant was called then; empty where it is none.</param>
public sealed record DetailSeen(string Detail, string Shows, string Title, string Words) : Fact
{
    /// <summary>It shows none of the variants that are known.</summary>
    public const string Another = "another";

    /// <summary>It could not be seen, or not be told.</summary>
    public const string CannotTell = "cannot tell";

    /// <summary>What photos of a detail are about.</summary>
    public static string PhotoAbout(string detail) => $"detail-{detail}";
}
