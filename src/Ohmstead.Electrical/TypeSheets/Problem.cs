namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Something wrong in a file: where, what, and what would be right.</summary>
/// <param name="Path">JSON path, such as <c>$.elements[3].ohms</c>.</param>
public sealed record Problem(string Path, string Wrong, string Right)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Path}: {Wrong}; {Right}";
}

/// <summary>What reading a file gives: the thing, or every problem found in it.</summary>
public sealed record Parsed<T>(T? Value, IReadOnlyList<Problem> Problems)
    where T : class
{
    /// <summary>The thing read; throws when there are problems.</summary>
    public T Required =>
        Problems.Count == 0 && Value is not null ? Value : throw new InvalidOperationException(string.Join("\n", Problems));

    /// <summary>True when nothing is wrong.</summary>
    public bool IsSound => Problems.Count == 0 && Value is not null;
}
