namespace Ohmstead.App.Tests.Commands;

/// <summary><c>listen</c> as a process.</summary>
public sealed class ListenTests
{
    /// <summary>A sine at 120.04 Hz over a little noise, 5 s of 8,000 samples, 16 bit.</summary>
    private static string Wave(double height, int seconds = 5)
    {
        var random = new Random(3);
        var sound = Enumerable
            .Range(0, 8000 * seconds)
            .SelectMany(n => BitConverter.GetBytes((short)((height * Math.Sin(2 * Math.PI * 120.04 * n / 8000)) + random.Next(-40, 40))))
            .ToArray();
        byte[] head =
        [
            .. "RIFF"u8,
            .. BitConverter.GetBytes(36 + sound.Length),
            .. "WAVEfmt "u8,
            16,
            0,
            0,
            0,
            1,
            0,
            1,
            0,
            .. BitConverter.GetBytes(8000),
            .. BitConverter.GetBytes(16000),
            2,
            0,
            16,
            0,
            .. "data"u8,
            .. BitConverter.GetBytes(sound.Length),
        ];
        var path = Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, "hum.wav");
        File.WriteAllBytes(path, [.. head, .. sound]);
        return path;
    }

    [Fact]
    public void The_answer_names_supply_lines_and_verdict_and_compares()
    {
        var (loud, soft) = (Wave(10_000), Wave(2_500));
        var answer = Tool.Json("listen", loud, soft, "--as", "idle,lifted");
        var heard = answer.List("recordings")[0];
        Assert.Equal(loud, heard.Text("file"));
        Assert.Equal(60.02, heard.Number("foundHertz"), 0.005);
        Assert.Equal(60, heard.Number("supplyHertz"));
        Assert.Equal(20 * Math.Log10(10_000 / 32768.0), heard.List("lines")[1].Number("levelDb"), 0.1);
        Assert.Equal(["hum"], heard.Words("verdict"));
        // A quarter of the height is 12 dB less.
        Assert.Equal(-12.04, answer.List("compare")[0].Number("changeDb"), 1.0);
        Assert.False(answer.GetProperty("gainMoved").GetBoolean());
    }

    [Fact]
    public void A_person_reads_a_table_and_what_it_does_not_prove()
    {
        var (code, output, error) = Tool.Run("listen", Wave(10_000));
        Assert.Equal((0, ""), (code, error));
        Assert.Matches("(?m)^     2   120\\.0 +-10\\.3", output);
        Assert.Contains("Watts do.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_file_that_cannot_be_listened_to_is_named_with_its_word()
    {
        var (brief, text) = (Wave(10_000, 3), Tool.File("note.wav", "no sound"));
        var (code, output, error) = Tool.Run("listen", Wave(10_000), brief, text, "/nowhere/at-all.wav");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains($"{brief}: too short; ", error, StringComparison.Ordinal);
        Assert.Contains($"{text}: not a WAV; ", error, StringComparison.Ordinal);
        Assert.Contains("/nowhere/at-all.wav: there is no such file; ", error, StringComparison.Ordinal);
        Refusal.NoTrace(error);
    }

    [Fact]
    public void Labels_must_be_as_many_as_files()
    {
        var (code, _, error) = Tool.Run("listen", Wave(10_000), "--as", "idle,load");
        Assert.Equal(2, code);
        Assert.Contains("--as: has 2 labels for 1 files", error, StringComparison.Ordinal);
    }
}
