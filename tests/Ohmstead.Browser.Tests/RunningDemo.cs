namespace Ohmstead.Browser.Tests;

/// <summary>One demo for all screens that are only looked at: to make its workshop anew for each costs more than the looking.</summary>
public sealed class RunningDemo : IAsyncLifetime
{
    internal RunningTool Tool { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() => Tool = await RunningTool.StartDemoAsync();

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Tool.DisposeAsync();
}
