namespace Ohmstead.App.Commands;

/// <summary>The input was refused; each line says where, what is wrong and what would be right.</summary>
internal sealed class RefusedInput(IReadOnlyList<string> lines) : Exception(string.Join("; ", lines))
{
    public RefusedInput(string line)
        : this([line]) { }

    public IReadOnlyList<string> Lines { get; } = lines;
}
