namespace Ohmstead.App.Background;

/// <summary>
/// What a person waits for at a screen: worked out beside it at once, never behind the diagnoses, which nobody waits for
/// (<see cref="UnitJobs"/>).
/// </summary>
internal static class ScreenWork
{
    private static int running;

    /// <summary>How much of it is under way.</summary>
    public static int Count => Volatile.Read(ref running);

    /// <summary>Works something out.</summary>
    /// <param name="closed">The screen was closed: what is not begun yet is left.</param>
    public static Task<T> RunAsync<T>(Func<T> work, CancellationToken closed = default) =>
        Task.Run(
            () =>
            {
                Interlocked.Increment(ref running);
                try
                {
                    return work();
                }
                finally
                {
                    Interlocked.Decrement(ref running);
                }
            },
            closed
        );
}
