using Ohmstead.Perf.Listening;
using Ohmstead.Workshop.Listening;

namespace Ohmstead.Workshop.Tests.Listening;

/// <summary>WAV files of every sort that phones and computers write, and those that are none.</summary>
public class WaveTests
{
    private static readonly MadeRecording Made = new(new Random(7), 5, 60, [double.NegativeInfinity, -20], -60);

    private static HumHeard Heard(byte[] wave) => HumRecording.Listen(() => new MemoryStream(wave));

    private static byte[] Bytes(Func<float, byte[]> of) => [.. Made.Samples.SelectMany(of)];

    public static TheoryData<string> Sorts => ["8", "16", "24", "32", "float", "stereo", "extensible", "other chunks", "endless", "beyond"];

    private static byte[] Sort(string sort)
    {
        byte[] Sixteen(float s) => BitConverter.GetBytes((short)Math.Round(s * 32767));
        return sort switch
        {
            "8" => MadeRecording.Wave(Bytes(s => [(byte)Math.Round(128 + (s * 127))]), MadeRecording.Rate, 1, 8, 1),
            "24" => MadeRecording.Wave(Bytes(s => BitConverter.GetBytes((int)Math.Round(s * 8388607))[..3]), MadeRecording.Rate, 1, 24, 1),
            "32" => MadeRecording.Wave(
                Bytes(s => BitConverter.GetBytes((int)Math.Round((double)s * 2147483000))),
                MadeRecording.Rate,
                1,
                32,
                1
            ),
            "float" => MadeRecording.Wave(Bytes(BitConverter.GetBytes), MadeRecording.Rate, 1, 32, 3),
            // The other channel is a whisper of something else.
            "stereo" => MadeRecording.Wave(
                [.. Made.Samples.SelectMany((s, n) => Sixteen((float)(0.01 * Math.Sin(n))).Concat(Sixteen(s)))],
                MadeRecording.Rate,
                2,
                16,
                1
            ),
            "extensible" => Extensible(MadeRecording.Wave(Bytes(Sixteen), MadeRecording.Rate, 1, 16, 1)),
            "other chunks" => Chunk(MadeRecording.Wave(Bytes(Sixteen), MadeRecording.Rate, 1, 16, 1)),
            "endless" => MadeRecording.Wave(Bytes(Sixteen), MadeRecording.Rate, 1, 16, 1, uint.MaxValue),
            "beyond" => MadeRecording.Wave(Bytes(Sixteen), MadeRecording.Rate, 1, 16, 1, 5_000_000),
            _ => MadeRecording.Wave(Bytes(Sixteen), MadeRecording.Rate, 1, 16, 1),
        };
    }

    private static byte[] Chunk(byte[] wave) => [.. wave[..12], .. "LIST"u8, 5, 0, 0, 0, 1, 2, 3, 4, 5, 0, .. wave[12..]];

    private static byte[] Extensible(byte[] wave)
    {
        byte[] more = [22, 0, 16, 0, 4, 0, 0, 0, 1, 0, 0, 0, 0, 0, 16, 0, 128, 0, 0, 170, 0, 56, 155, 113];
        byte[] made = [.. wave[..36], .. more, .. wave[36..]];
        (made[16], made[20], made[21]) = (40, 0xFE, 0xFF);
        return made;
    }

    [Theory]
    [MemberData(nameof(Sorts))]
    public void Every_sort_of_file_says_the_same(string sort)
    {
        var heard = Heard(Sort(sort)).Recording;
        Assert.NotNull(heard);
        Assert.Equal(5, heard.Seconds, 1e-9);
        Assert.Equal(60, heard.SupplyHertz);
        Assert.Equal(-20, heard.Lines[1].LevelDb, 0.15);
    }

    [Fact]
    public void What_cannot_be_listened_to_has_its_word()
    {
        var good = Sort("16");
        Assert.Equal("not a WAV", Heard([]).Word);
        Assert.Equal("not a WAV", Heard("RIFF1234AVI LIST"u8.ToArray()).Word);
        Assert.Equal("not a WAV", Heard(good[..30]).Word);
        Assert.Equal("not a WAV", Heard(MadeRecording.Wave([1, 2], 8000, 1, 4, 17)).Word);
        Assert.Equal("sample rate", Heard(MadeRecording.Wave(new byte[80_000], 3999, 1, 16, 1)).Word);
        Assert.Equal("too short", Heard(MadeRecording.Wave(new byte[63_998], 8000, 1, 16, 1)).Word);
        Assert.Equal("too short", Heard(good[..44]).Word);
    }

    /// <remarks>A sine cut at 0.9 of its height stays at the top for asin: 0.144 of the time at both ends; one of 0.2 of full scale is loud enough to be no clipped one.</remarks>
    [Theory]
    [InlineData(1.0, 0.9, "clipped")]
    [InlineData(0.9, 1.0, "")]
    [InlineData(0.22, 0.2, "")]
    public void A_top_that_was_cut_off_is_clipped(double height, double cut, string word)
    {
        var sound = Enumerable
            .Range(0, 40_000)
            .SelectMany(n => BitConverter.GetBytes((short)(32767 * Math.Clamp(height * Math.Sin(n * 0.0942477), -cut, cut))))
            .ToArray();
        Assert.Equal(word, Heard(MadeRecording.Wave(sound, 8000, 1, 16, 1)).Word);
    }

    [Fact]
    public void Spoiled_files_are_refused_by_a_word_or_heard() => Spoil(80);

    [Fact]
    [Trait("kind", "long")]
    public void Three_hundred_spoiled_files_are_refused_by_a_word_or_heard() => Spoil(300);

    private static void Spoil(int files)
    {
        var (random, good, words) = (new Random(16), Sort("stereo")[..140_000], new HashSet<string>());
        for (var n = 0; n < files; n++)
        {
            var wave = good.ToArray();
            for (var k = random.Next(1, 5); k > 0; k--)
                wave[random.Next(random.Next(2) == 0 ? 48 : wave.Length)] = (byte)random.Next(256);
            if (random.Next(4) == 0)
                wave = wave[..random.Next(wave.Length)];
            var heard = Heard(wave);
            Assert.True(heard.Recording is not null || (heard.Word.Length > 0 && heard.Right.Length > 0));
            words.Add(heard.Word);
        }
        Assert.True(words.Count >= 3, string.Join(',', words));
    }
}
