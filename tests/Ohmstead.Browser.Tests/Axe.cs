using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// axe, run in the page that it looks at. No screen has a frame in it, so no second page is opened to put the findings of frames
/// together; and what is as it should be is not written down node by node.
/// </summary>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    private const string Run = """
        async rules => {
            const found = await axe.run(document, { resultTypes: ['violations'], ...(rules.length && { runOnly: { type: 'rule', values: rules } }) });
            return found.violations.map(v => `${v.id}: ${v.help} (${v.nodes.map(n => n.html).join(', ')})`);
        }
        """;

    /// <summary>What is wrong with a page as it stands.</summary>
    /// <param name="page">Where to look.</param>
    /// <param name="rules">The only rules to hold it against; none for all.</param>
    public static async Task<string[]> ViolationsAsync(IPage page, params string[] rules)
    {
        Assert.Single(page.Frames);
        if (!await page.EvaluateAsync<bool>("'axe' in window"))
            await page.EvaluateAsync(Script);
        return await page.EvaluateAsync<string[]>(Run, rules);
    }
}
