namespace Ohmstead.App.Tests.Commands;

/// <summary>What a verb writes to a file is there whole, or not at all.</summary>
public sealed class WrittenFileTests
{
    private static string Outline => Path.Combine(Tool.Root, "tests/Reference/outlines/direct-60.outline.json");

    [Fact]
    public void A_full_disk_is_said_in_plain_words_and_what_lay_there_before_is_still_there()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "no /dev/full here");
        var full = Tool.File("full.sheet.json", "");
        File.Delete(full);
        File.CreateSymbolicLink(full, "/dev/full");
        var (code, output, error) = Tool.Run("draft", Outline, "--sheet", full);
        Assert.Equal((1, ""), (code, output));
        Assert.Contains($"{full} is not written: the disk is full. Free some space on it", error, StringComparison.Ordinal);
        Assert.Equal("/dev/full", new FileInfo(full).LinkTarget);
    }

    [Fact]
    public void A_file_that_is_written_over_is_replaced_whole_and_nothing_is_left_beside_it()
    {
        var file = Tool.File("old.sheet.json", new string('x', 1_000_000));
        var (code, _, error) = Tool.Run("draft", Outline, "--sheet", file);
        Assert.True(code == 0, error);
        Assert.Equal(0, Tool.Run("check", file).Code);
        Assert.Equal([file], Directory.GetFiles(Path.GetDirectoryName(file)!));
    }
}
