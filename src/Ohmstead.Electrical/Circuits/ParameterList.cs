using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>The parameters of a sheet with their usual spreads (common practice, no source; editable in the sheet).</summary>
internal static class ParameterList
{
    public static ImmutableArray<Parameter> Of(TypeSheet sheet, ImmutableArray<(int Winding, Slider Slider)> sliders)
    {
        var all = ImmutableArray.CreateBuilder<Parameter>();
        for (var n = 0; n < sheet.Elements.Length; n++) AddElement(all, sheet.Elements[n], n);
        for (var n = 0; n < sliders.Length; n++)
        {
            var s = sliders[n].Slider;
            Add(all, ParameterKind.ContactOhms, n, $"elements.{s.Id}.contactOhms", s.ContactOhms, s.Spread.Of("contactOhms", s.Spread.Of("contact", 0.4)));
        }
        for (var n = 0; n < sheet.Cores.Length; n++)
        {
            var c = sheet.Cores[n];
            Add(all, ParameterKind.LossOhms, n, $"cores.{c.Id}.lossOhms", c.LossOhms, c.Spread.Of("lossOhms", 0.10));
            var (name, nominal) = c.MagnetisingHenries > 0 ? ("magnetisingHenries", c.MagnetisingHenries) : ("excitation", 1.0);
            Add(all, ParameterKind.Excitation, n, $"cores.{c.Id}.{name}", nominal, c.Spread.Of(name, 0.12));
        }
        return all.ToImmutable();
    }

    private static void AddElement(ImmutableArray<Parameter>.Builder all, Element e, int n)
    {
        var path = $"elements.{e.Id}.";
        switch (e)
        {
            case Resistive r:
                var usual = r.Kind switch { "resistor" => 0.08, "insulation" => 0.7, _ => 0.25 };
                Add(all, ParameterKind.Ohms, n, path + "ohms", r.Ohms, r.Spread.Of("ohms", usual));
                break;
            case Winding w:
                Add(all, ParameterKind.Ohms, n, path + "ohms", w.Ohms, w.Spread.Of("ohms", 0.08));
                Add(all, ParameterKind.Turns, n, path + "turns", w.Turns, w.Spread.Of("turns", 0.006));
                Add(all, ParameterKind.LeakageHenries, n, path + "leakageHenries", w.LeakageHenries, w.Spread.Of("leakageHenries", 0.2));
                break;
            case Rectifier d:
                Add(all, ParameterKind.SaturationAmps, n, path + "saturationAmps", d.SaturationAmps, d.Spread.Of("saturationAmps", 0.5));
                Add(all, ParameterKind.SeriesOhms, n, path + "seriesOhms", d.SeriesOhms, d.Spread.Of("seriesOhms", 0.3));
                Add(all, ParameterKind.LeakageOhms, n, path + "leakageOhms", d.LeakageOhms, d.Spread.Of("leakageOhms", 0.5));
                break;
            default:
                break;
        }
    }

    private static void Add(ImmutableArray<Parameter>.Builder all, ParameterKind kind, int index, string path, double nominal, double sigma)
    {
        if (nominal > 0 && sigma > 0) all.Add(new Parameter(kind, index, path, nominal, sigma));
    }
}
