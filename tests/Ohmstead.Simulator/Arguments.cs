namespace Ohmstead.Simulator;

/// <summary>A verb, its places, and options that each take one value.</summary>
internal sealed class Arguments
{
    private readonly List<string> places = [];
    private readonly List<(string Name, string Value)> options = [];

    public Arguments(string[] args)
    {
        Verb = args.Length > 0 ? args[0] : "";
        for (int n = 1; n < args.Length; n++)
        {
            if (!args[n].StartsWith("--", StringComparison.Ordinal))
                places.Add(args[n]);
            else if (n + 1 < args.Length)
                options.Add((args[n][2..], args[++n]));
            else
                throw new InvalidDataException($"{args[n]} needs a value");
        }
    }

    public string Verb { get; }

    public string Place(int n) => n < places.Count ? places[n] : throw new InvalidDataException($"{Verb} needs more arguments");

    public string? One(string name) => options.LastOrDefault(option => option.Name == name).Value;

    public IEnumerable<string> All(string name) => options.Where(option => option.Name == name).Select(option => option.Value);
}
