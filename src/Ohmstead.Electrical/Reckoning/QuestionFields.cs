using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>
/// A place in a question file that reads typed values and collects every problem, each with its JSON path. What could not be
/// read is replaced by something harmless; the file is refused when problems were found.
/// </summary>
/// <param name="at">The place.</param>
/// <param name="sheet">The type sheet that was given with the question, if one was.</param>
public readonly struct QuestionFields(JsonCursor at, TypeSheet? sheet)
{
    private const int MostItems = 2000;

    /// <summary>The JSON path of this place.</summary>
    public string Path => at.Path;

    /// <summary>The type sheet that was given with the question, or null.</summary>
    public TypeSheet? Sheet => sheet;

    /// <summary>The type sheet; a problem where none was given.</summary>
    public TypeSheet? NeededSheet()
    {
        if (sheet is null)
            at.Report("needs a type sheet", "give one with --sheet FILE");
        return sheet;
    }

    /// <summary>True when the field is there and not null.</summary>
    public bool Has(string name) => at.Has(name);

    /// <summary>False where a problem was found at a field or deeper in it: what it means together with others is not asked then.</summary>
    public bool IsSoundAt(string name) => at.IsSoundAt(name);

    /// <summary>A problem at this place.</summary>
    public void Report(string wrong, string right) => at.Report(wrong, right);

    /// <summary>A problem at a field, or deeper: <c>trips</c>, <c>records[2]</c>.</summary>
    public void Report(string field, string wrong, string right) => at.Report(field, wrong, right);

    /// <summary>A required number.</summary>
    public double Number(string name, NumberRange range)
    {
        if (Has(name))
            return At(name).AsNumber(range);
        Report(name, "is missing", $"{range.Words} is required");
        return range.Harmless;
    }

    /// <summary>A number with a default.</summary>
    public double Number(string name, NumberRange range, double otherwise) => Has(name) ? At(name).AsNumber(range) : otherwise;

    /// <summary>A number that may be left out.</summary>
    public double? Optional(string name, NumberRange range) => Has(name) ? At(name).AsNumber(range) : null;

    /// <summary>A required sum of money, kept to the last digit as it was typed.</summary>
    public decimal Money(string name) => Digits(name, Number(name, NumberRange.Money));

    /// <summary>A sum of money with a default.</summary>
    public decimal Money(string name, decimal otherwise) => Has(name) ? Money(name) : otherwise;

    /// <summary>A sum of money that may be left out.</summary>
    public decimal? OptionalMoney(string name) => Has(name) ? Money(name) : null;

    private decimal Digits(string name, double read) =>
        Has(name)
        && at.At(name).Element is { ValueKind: JsonValueKind.Number } typed
        && typed.TryGetDecimal(out var exact)
        && Math.Abs(exact) <= (decimal)NumberRange.Money.High
            ? exact
            : (decimal)read;

    /// <summary>This place as a number.</summary>
    public double AsNumber(NumberRange range)
    {
        if (at.Element.ValueKind == JsonValueKind.Number && at.Element.TryGetDouble(out var value) && double.IsFinite(value))
        {
            if (range.Holds(value))
                return value;
            at.Report(
                $"is {JsonCursor.Show(value)}",
                Math.Abs(value) > NumberRange.Most
                    ? $"at most {JsonCursor.Show(NumberRange.Most)} is expected"
                    : $"{range.Words} is expected"
            );
        }
        else
            at.Report($"is {at.Said}", $"{range.Words} is expected");
        return range.Harmless;
    }

    /// <summary>True where the field holds a number of the range, against which another may be held.</summary>
    public bool Holds(string name, NumberRange range) =>
        Has(name) && at.At(name).Element is { ValueKind: JsonValueKind.Number } e && e.TryGetDouble(out var value) && range.Holds(value);

    /// <summary>A whole number with a default.</summary>
    public int Whole(string name, int low, int high, int? otherwise = null)
    {
        var range = new NumberRange(low, high);
        if (!Has(name) && otherwise is { } usual)
            return usual;
        var value = Number(name, range);
        if (value == Math.Floor(value))
            return (int)value;
        Report(name, $"is {JsonCursor.Show(value)}", "a whole number is expected");
        return (int)value;
    }

    /// <summary>Yes or no, with a default.</summary>
    public bool Flag(string name, bool otherwise = false) => Has(name) ? at.Flag(name) : otherwise;

    /// <summary>A required name.</summary>
    public string Word(string name) => at.Word(name);

    /// <summary>A name with a default.</summary>
    public string Word(string name, string otherwise) => at.Word(name, otherwise);

    /// <summary>This place as a name.</summary>
    public string AsWord() => at.AsWord();

    /// <summary>One word of a list; required where there is no default.</summary>
    public string OneOf(string name, ImmutableArray<string> words, string? otherwise = null)
    {
        if (!Has(name) && otherwise is not null)
            return otherwise;
        var right = $"one of {string.Join(", ", words)} is expected";
        if (!Has(name))
            Report(name, "is missing", right);
        else if (at.At(name) is { Element.ValueKind: JsonValueKind.String } word && words.Contains(word.Element.GetString()!))
            return word.Element.GetString()!;
        else
            at.At(name).Report($"is {at.At(name).Said}", right);
        return otherwise ?? words[0];
    }

    /// <summary>A required name that no earlier one of the list has.</summary>
    public string NewId(string name, ISet<string> taken)
    {
        var id = Word(name);
        if (id.Length > 0 && !taken.Add(id))
            Report(name, $"\"{id}\" is there twice", "each has a name of its own");
        return id;
    }

    /// <summary>A required name that must be one of those known.</summary>
    public string KnownId(string name, IReadOnlyCollection<string> known, string what)
    {
        var id = Word(name);
        if (id.Length > 0 && !known.Contains(id, StringComparer.Ordinal))
            Report(
                name,
                $"\"{id}\" is no {what}",
                known.Count > 0 ? $"one of {string.Join(", ", known.Take(12))}" : $"there is no {what} here"
            );
        return id;
    }

    /// <summary>A list of numbers; the default stands where it is left out, and without one it is required.</summary>
    public ImmutableArray<double> Numbers(string name, NumberRange range, ImmutableArray<double>? otherwise = null, int least = 0) =>
        !Has(name) && otherwise is { } usual ? usual : Items(name, f => f.AsNumber(range), least, isRequired: otherwise is null);

    /// <summary>A required list of objects.</summary>
    public ImmutableArray<T> List<T>(string name, Func<QuestionFields, T> read, int least = 1, int most = MostItems) =>
        Objects(name, read, least, isRequired: true, most);

    /// <summary>A list of objects that may be left out.</summary>
    public ImmutableArray<T> OptionalList<T>(string name, Func<QuestionFields, T> read, int most = MostItems) =>
        Objects(name, read, 0, isRequired: false, most);

    /// <summary>The places of a list whose items may be of several kinds.</summary>
    public ImmutableArray<QuestionFields> Places(string name, bool isRequired = true, int least = 0) =>
        Items(name, f => f, least, isRequired);

    /// <summary>A field as a place, for what may be of several kinds; only where <see cref="Has"/>.</summary>
    public QuestionFields Place(string name) => At(name);

    /// <summary>A part with fields of its own, or null where it is left out; a problem where it is no object.</summary>
    public QuestionFields? Part(string name)
    {
        if (!Has(name))
            return null;
        return at.At(name).IsObject() ? At(name) : null;
    }

    /// <summary>A required part with fields of its own.</summary>
    public QuestionFields? NeededPart(string name, string right)
    {
        if (!Has(name))
            Report(name, "is missing", $"{right} is required");
        return Part(name);
    }

    /// <summary>The fields of an object whose names are free, such as item: count.</summary>
    public ImmutableArray<(string Name, QuestionFields At)> Named(string name)
    {
        var given = sheet;
        return [.. at.Fields(name).Select(f => (f.Name, new QuestionFields(f.At, given)))];
    }

    /// <summary>A list or text at this place, for values that are not only numbers.</summary>
    public JsonElement Element => at.Element;

    /// <summary>What stands here, in words for a problem.</summary>
    public string Said => at.Said;

    private QuestionFields At(string name) => new(at.At(name), sheet);

    private ImmutableArray<T> Objects<T>(string name, Func<QuestionFields, T> read, int least, bool isRequired, int most)
    {
        var items = Items(name, f => f, least, isRequired, most);
        // A problem of its own for what is no object: its fields are not asked for then.
        return [.. items.Where(f => f.IsObject()).Select(read)];
    }

    private ImmutableArray<T> Items<T>(string name, Func<QuestionFields, T> read, int least, bool isRequired, int most = MostItems)
    {
        var places = isRequired ? at.RequiredList(name, most) : at.List(name, most);
        if (Has(name) && at.At(name).Element is { ValueKind: JsonValueKind.Array } list && list.GetArrayLength() < least)
            Report(
                name,
                list.GetArrayLength() == 0 ? "is empty" : $"has {list.GetArrayLength().ToString(CultureInfo.InvariantCulture)}",
                $"{least.ToString(CultureInfo.InvariantCulture)} or more are expected"
            );
        var given = sheet;
        return [.. places.Select(p => read(new QuestionFields(p, given)))];
    }

    private bool IsObject() => at.IsObject();
}
