using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>What is to be expected, in words.</summary>
public static class ExpectationWords
{
    extension(Expectation expected)
    {
        /// <summary>"15.9–17.0 V", "OL".</summary>
        public string Band => ValueText.Band(expected.Low, expected.High, expected.Quantity);
    }
}
