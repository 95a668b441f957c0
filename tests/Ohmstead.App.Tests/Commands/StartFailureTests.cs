using System.Diagnostics;

namespace Ohmstead.App.Tests.Commands;

/// <summary>The program is started on a folder that it cannot use: it ends with words and a status, and begins no workshop there.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class StartFailureTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("ohmstead-test-");

    public void Dispose()
    {
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_000_000);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void A_read_only_folder_is_said_to_be_one()
    {
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b101_101_101);
        var (code, output, error) = RunAsNobody();
        Assert.Equal((1, ""), (code, output));
        Assert.Contains("permissions", error, StringComparison.Ordinal);
        Assert.DoesNotContain("another ohmstead", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_database_is_said_and_left_alone()
    {
        var database = Path.Combine(folder.FullName, "workshop.db");
        File.WriteAllText(database, new string('x', 5000));
        var (code, output, error) = Tool.Run("--port", "0", "--data", folder.FullName);
        Assert.Equal((1, ""), (code, output));
        Assert.Contains("is damaged", error, StringComparison.Ordinal);
        Assert.Contains("ohmstead restore", error, StringComparison.Ordinal);
        Assert.Equal(5000, new FileInfo(database).Length);
    }

    /// <summary>Permissions bind nobody less than root: where the tests run as root, the program runs as the user who owns nothing.</summary>
    private (int Code, string Out, string Error) RunAsNobody()
    {
        string[] command = ["dotnet", Path.Combine(AppContext.BaseDirectory, "ohmstead.dll"), "--port", "0", "--data", folder.FullName];
        string[] asNobody = ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", .. command];
        var whole = Environment.IsPrivilegedProcess ? asNobody : command;
        var start = new ProcessStartInfo(whole[0], whole[1..]);
        start.Environment["HOME"] = "/";
        using var process = Tool.Start(start, "/");
        return Tool.Finish(process, TimeSpan.FromSeconds(60));
    }
}
