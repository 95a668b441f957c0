namespace Ohmstead.Workshop.Journal;

/// <summary>The unit went back to its owner.</summary>
/// <param name="Manner">Working, or not to be plugged in.</param>
/// <param name="By">Who handed it back.</param>
public sealed record Returned(ReturnManner Manner, string By) : Fact;

/// <summary>How a unit went back.</summary>
public enum ReturnManner
{
    /// <summary>Working, as tested: nothing was open.</summary>
    Working,

    /// <summary>With a paper and a label that forbid to plug it in.</summary>
    NotToBePluggedIn,
}

/// <summary>A paper was made.</summary>
/// <param name="Paper">Which: "service-record" or "bench-sheet".</param>
public sealed record PaperMade(string Paper) : Fact
{
    /// <summary>The paper that ends the job.</summary>
    public const string ServiceRecord = "service-record";
}
