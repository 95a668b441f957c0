using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Web;

/// <summary>A page that lost its connection is nobody's until it is back.</summary>
public sealed class PageConnectionTests
{
    [Fact]
    public async Task Loss_and_return_are_told_once_each()
    {
        var (connection, told, stop) = (new PageConnection(), new List<bool>(), TestContext.Current.CancellationToken);
        connection.Changed += () => told.Add(connection.IsUp);
        await connection.OnConnectionUpAsync(null!, stop);
        Assert.True(connection.IsUp);
        Assert.Empty(told);
        await connection.OnConnectionDownAsync(null!, stop);
        await connection.OnConnectionDownAsync(null!, stop);
        await connection.OnConnectionUpAsync(null!, stop);
        Assert.Equal([false, true], told);
    }
}
