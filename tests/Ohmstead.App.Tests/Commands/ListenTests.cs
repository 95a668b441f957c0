using System.Diagnostics;
using System.Globalization;

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

    /// <remarks>Spoiled anywhere, most often in the header, or cut short.</remarks>
    [Fact]
    [Trait("kind", "long")]
    public void Three_hundred_spoiled_files_end_in_time_heard_or_refused_by_name_and_word()
    {
        var (random, good, ends) = (new Random(16), File.ReadAllBytes(Wave(10_000)), new Dictionary<int, int>());
        var path = Wave(10_000);
        for (var n = 0; n < 300; n++)
        {
            var wave = good.ToArray();
            for (var k = random.Next(1, 5); k > 0; k--)
                wave[random.Next(random.Next(3) > 0 ? 48 : wave.Length)] = (byte)random.Next(256);
            File.WriteAllBytes(path, random.Next(4) == 0 ? wave[..random.Next(wave.Length)] : wave);
            var began = Stopwatch.GetTimestamp();
            var (code, output, error) = Tool.Run(["listen", path, .. n % 2 == 0 ? ["--json"] : Array.Empty<string>()]);
            Assert.True(Stopwatch.GetElapsedTime(began) < TimeSpan.FromSeconds(5), error);
            Assert.True(
                code == 0 ? output.Length > 0 : code == 2 && output.Length == 0 && error.StartsWith($"{path}: ", StringComparison.Ordinal),
                error
            );
            Refusal.NoTrace(error);
            ends[code] = ends.GetValueOrDefault(code) + 1;
        }
        Assert.True(ends[0] > 30 && ends[2] > 30);
    }

    /// <remarks>17 minutes of 48,000 samples, two channels: 200 MB, of which the program never holds more than a block.</remarks>
    [Fact]
    [Trait("kind", "long")]
    public async Task A_recording_of_two_hundred_megabytes_is_listened_to_without_holding_it()
    {
        if (!OperatingSystem.IsLinux())
            return;
        const int rate = 48_000;
        const long bytes = 200_000_000;
        var path = Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, "long.wav");
        using (var file = new BinaryWriter(File.Create(path)))
        {
            file.Write("RIFF"u8);
            file.Write((uint)(36 + bytes));
            file.Write("WAVEfmt "u8);
            foreach (var word in new[] { 16, 0x0002_0001, rate, 4 * rate, 0x0010_0004 })
                file.Write(word);
            file.Write("data"u8);
            file.Write((uint)bytes);
            var random = new Random(5);
            for (long n = 0; n < bytes / 4; n++)
            {
                file.Write((short)random.Next(-40, 40));
                file.Write((short)((8000 * Math.Sin(2 * Math.PI * 120 * n / rate)) + random.Next(-40, 40)));
            }
        }
        using var process = Tool.Start(["listen", path, "--json"]);
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var most = 0.0;
        while (!process.WaitForExit(20))
            most = Math.Max(most, HeldMegabytes(process.Id));
        File.Delete(path);
        Assert.Equal(0, process.ExitCode);
        Assert.Contains("\"supplyHertz\": 60", await output, StringComparison.Ordinal);
        Assert.InRange(most, 10, 150);
    }

    /// <summary>The most that a running process has held, as Linux counts it; 0 once it is gone.</summary>
    private static double HeldMegabytes(int process)
    {
        try
        {
            var line = File.ReadLines(FormattableString.Invariant($"/proc/{process}/status"))
                .FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null
                ? 0
                : double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) / 1000;
        }
        catch (IOException)
        {
            return 0;
        }
    }

    [Fact]
    public void Labels_must_be_as_many_as_files()
    {
        var (code, _, error) = Tool.Run("listen", Wave(10_000), "--as", "idle,load");
        Assert.Equal(2, code);
        Assert.Contains("--as: has 2 labels for 1 files", error, StringComparison.Ordinal);
    }
}
