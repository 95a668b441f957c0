using System.Text;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Listening;

namespace Ohmstead.Perf;

/// <summary>Writes the figures of listening between the marks of their page.</summary>
internal static class HumPage
{
    public static int Run(string root)
    {
        var page = new StringBuilder();
        var asked = HumExperiment.Run(HumExperiment.FullRecordings, 1, page);
        MarkedPage.Insert(Path.Combine(root, "docs/methods/listening.md"), "hum", page.ToString());
        return asked.All(a => a.IsMet) ? 0 : 1;
    }
}
