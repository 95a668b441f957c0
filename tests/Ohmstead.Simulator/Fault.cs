namespace Ohmstead.Simulator;

/// <summary>One fault as the command line writes it: ELEMENT:MODE, ELEMENT:MODE=VALUE or A.end~B.end:swap.</summary>
internal sealed record Fault(string Element, string Mode, double? Value)
{
    public static Fault Parse(string text)
    {
        int colon = text.LastIndexOf(':');
        if (colon < 0)
            throw new InvalidDataException($"'{text}' is not ELEMENT:MODE");
        string mode = text[(colon + 1)..];
        int equals = mode.IndexOf('=', StringComparison.Ordinal);
        return equals < 0
            ? new Fault(text[..colon], mode, null)
            : new Fault(text[..colon], mode[..equals], Fields.Parse(mode[(equals + 1)..]));
    }

    public override string ToString() => Value is { } value ? $"{Element}:{Mode}={value.Text()}" : $"{Element}:{Mode}";
}
