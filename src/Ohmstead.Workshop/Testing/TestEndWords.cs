namespace Ohmstead.Workshop.Testing;

/// <summary>How a test ended, in the words of lists and papers.</summary>
public static class TestEndWords
{
    /// <summary>"pass", "close pass", "close fail", "fail", "not judged", "not taken", "to do".</summary>
    public static string Of(TestEnd end) =>
        end switch
        {
            TestEnd.Pass => "pass",
            TestEnd.ClosePass => "close pass",
            TestEnd.CloseFail => "close fail",
            TestEnd.Fail => "fail",
            TestEnd.NotJudged => "not judged",
            TestEnd.NotTaken => "not taken",
            _ => "to do",
        };
}
