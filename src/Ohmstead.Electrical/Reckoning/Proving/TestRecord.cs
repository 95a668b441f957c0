namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What stands below every answer that stands for a test.</summary>
internal static class TestRecord
{
    /// <summary>No answer says that a unit is safe.</summary>
    public const string NoCertification = "tests recorded; no certification";
}
