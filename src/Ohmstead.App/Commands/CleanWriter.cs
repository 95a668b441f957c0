using System.Text;

namespace Ohmstead.App.Commands;

/// <summary>
/// The way to the terminal. What a file brought along must not steer it: a control character, or one that turns the direction of
/// writing, is shown as �. Bold type is asked for by two marks that are no characters, and made here alone.
/// </summary>
internal sealed class CleanWriter(TextWriter inner) : TextWriter
{
    /// <summary>Bold from here. Unicode gives this place to programs for their own use and to no text.</summary>
    public const char BoldOn = '\uFDD0';

    /// <summary>Plain again.</summary>
    public const char BoldOff = '\uFDD1';

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value)
    {
        if (value is '\n' or '\t' || (value == '\r' && OperatingSystem.IsWindows()))
            inner.Write(value);
        else if (value is BoldOn or BoldOff)
            inner.Write(value == BoldOn ? "\e[1m" : "\e[0m");
        else
            inner.Write(char.IsControl(value) || IsTurn(value) ? '\uFFFD' : value);
    }

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(ReadOnlySpan<char> buffer)
    {
        foreach (var c in buffer)
            Write(c);
    }

    public override void Write(string? value) => Write(value.AsSpan());

    public override void Flush() => inner.Flush();

    private static bool IsTurn(char c) => c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
