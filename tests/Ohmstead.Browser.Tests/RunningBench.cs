namespace Ohmstead.Browser.Tests;

/// <summary>One workshop that knows the types of the invented one, for the journeys that only need a unit of their own in it.</summary>
public sealed class RunningBench : IAsyncLifetime
{
    internal RunningTool Tool { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() => Tool = await RunningTool.StartWithTypesAsync("twin-175", "solo-110");

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Tool.DisposeAsync();
}
