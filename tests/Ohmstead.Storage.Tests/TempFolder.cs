namespace Ohmstead.Storage.Tests;

/// <summary>A folder for one test, removed afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;

    public string Of(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
