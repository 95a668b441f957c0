using System.Diagnostics;

namespace Ohmstead.App.Tests.Commands;

/// <summary>Files that are no text files of a sensible size are refused before anything is parsed.</summary>
public sealed class FileTests
{
    /// <summary>As a hole in the file: whoever began to read it would stop at 20 MB of zeros, and would not know its size.</summary>
    [Fact]
    public void A_hundred_gigabytes_are_refused_by_their_size()
    {
        var path = Tool.File("large.json", "");
        using (var file = File.OpenWrite(path))
            file.SetLength(100_000_000_000);
        Refusal.Expect(path, "$: has 100000 MB; at most 20 MB", "check", path);
        File.Delete(path);
    }

    [Fact]
    public void Deep_nesting_within_the_size_limit_is_refused()
    {
        var path = Tool.File("deep.json", new string('[', 19_000_000));
        Refusal.Expect(path, "$: ", "check", path);
        File.Delete(path);
        path = Tool.File("deep.json", string.Concat(Enumerable.Repeat("{\"a\":", 200_000)));
        Refusal.Expect(path, "$: ", "check", path);
    }

    [Fact]
    public void A_pipe_that_never_ends_is_refused()
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "no such device here");
        Refusal.Expect("/dev/zero", "$: does not end", "check", "/dev/zero");
    }

    [Fact]
    public void A_missing_file_a_folder_and_an_empty_name_are_refused()
    {
        var missing = Path.Combine(Path.GetTempPath(), "there-is-none.json");
        Refusal.Expect(missing, "$: there is no such file", "check", missing);
        Refusal.Expect(missing, "$: there is no such file", "diagnose", Tool.Sample, missing, "--json");
        var folder = Path.Combine(missing, "nor-this.json");
        Refusal.Expect(folder, "$: there is no such file", "check", folder);
        Refusal.Expect(Path.GetTempPath(), "$: is a folder", "check", Path.GetTempPath());
        Assert.Equal(2, Tool.Run("check", "").Code);
    }

    [Fact]
    public void Text_that_is_not_UTF_8_is_refused_and_a_byte_order_mark_is_not()
    {
        var path = Tool.File("odd.json", "");
        File.WriteAllText(path, File.ReadAllText(Tool.Sample), System.Text.Encoding.Unicode);
        Refusal.Expect(path, "$: is not UTF-8", "check", path);
        File.WriteAllBytes(path, [0x7b, 0xc3, 0x28, 0x7d]);
        Refusal.Expect(path, "$: is not UTF-8", "check", path);
        File.WriteAllText(path, File.ReadAllText(Tool.Sample), new System.Text.UTF8Encoding(true));
        Assert.Equal(0, Tool.Run("check", path).Code);
    }

    [Fact]
    public void The_files_of_a_fit_are_all_looked_at()
    {
        var (one, two) = (Tool.File("one.json", "{"), Tool.File("two.json", ""));
        var (code, _, error) = Tool.Run("fit", Tool.Sample, one, two);
        Assert.Equal(2, code);
        Assert.Contains($"{one}: $", error, StringComparison.Ordinal);
        Assert.Contains($"{two}: $", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_full_disk_under_the_answer_is_one_plain_line_and_exit_status_1()
    {
        Assert.SkipUnless(File.Exists("/dev/full") && File.Exists("/bin/sh"), "no such device here");
        var start = new ProcessStartInfo("/bin/sh");
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(
            $"dotnet '{Path.Combine(AppContext.BaseDirectory, "ohmstead.dll")}' predict '{Tool.Sample}' --json >/dev/full"
        );
        using var process = Tool.Start(start, Path.GetTempPath());
        var (code, _, error) = Tool.Finish(process, TimeSpan.FromSeconds(60));
        Assert.Equal(1, code);
        Assert.Single(error.TrimEnd().Split('\n'));
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }
}
