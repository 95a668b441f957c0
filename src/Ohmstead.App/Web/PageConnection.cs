using Microsoft.AspNetCore.Components.Server.Circuits;

namespace Ohmstead.App.Web;

/// <summary>
/// Whether a page is connected now. The page of a tablet that went to sleep or out of reach is kept for minutes, so that it goes on where it
/// was; its person is not there meanwhile.
/// </summary>
internal sealed class PageConnection : CircuitHandler
{
    /// <summary>The connection went or came back. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>True until it is lost, and once it is back.</summary>
    public bool IsUp { get; private set; } = true;

    /// <inheritdoc/>
    public override Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken) => Set(true);

    /// <inheritdoc/>
    public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken) => Set(false);

    private Task Set(bool isUp)
    {
        var was = IsUp;
        IsUp = isUp;
        if (was != isUp)
            Changed?.Invoke();
        return Task.CompletedTask;
    }
}
