using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>The parameters of a sheet with their usual spreads (common practice, no source; editable in the sheet).</summary>
internal static class ParameterList
{
    public static ImmutableArray<Parameter> Of(TypeSheet sheet, ImmutableArray<(int Winding, Slider Slider)> sliders)
    {
        var all = ImmutableArray.CreateBuilder<Parameter>();
        for (var n = 0; n < sheet.Elements.Length; n++)
            AddElement(all, sheet.Elements[n], n);
        for (var n = 0; n < sliders.Length; n++)
        {
            var s = sliders[n].Slider;
            Add(
                all,
                ParameterKind.ContactOhms,
                n,
                $"elements.{s.Id}.contactOhms",
                s.ContactOhms,
                s.Spread.Of("contactOhms", s.Spread.Of("contact", ElementKind.Slider.UsualSpread("contactOhms"))),
                s.KindError.Of("contactOhms", 0)
            );
        }
        for (var n = 0; n < sheet.Cores.Length; n++)
        {
            var c = sheet.Cores[n];
            Add(
                all,
                ParameterKind.LossOhms,
                n,
                $"cores.{c.Id}.lossOhms",
                c.LossOhms,
                c.Spread.Of("lossOhms", Core.UsualSpread("lossOhms")),
                c.KindError.Of("lossOhms", 0)
            );
            var (name, nominal) = c.MagnetisingHenries > 0 ? ("magnetisingHenries", c.MagnetisingHenries) : ("excitation", 1.0);
            Add(
                all,
                ParameterKind.Excitation,
                n,
                $"cores.{c.Id}.{name}",
                nominal,
                c.Spread.Of(name, Core.UsualSpread(name)),
                c.KindError.Of(name, 0)
            );
        }
        return all.ToImmutable();
    }

    private static void AddElement(ImmutableArray<Parameter>.Builder all, Element e, int n)
    {
        foreach (var (kind, field, nominal) in ElementNumbers.Spread(e))
            Add(all, kind, n, $"elements.{e.Id}.{field}", nominal, e.Spread.Of(field, e.Kind.UsualSpread(field)), e.KindError.Of(field, 0));
    }

    private static void Add(
        ImmutableArray<Parameter>.Builder all,
        ParameterKind kind,
        int index,
        string path,
        double nominal,
        double sigma,
        double kindSigma
    )
    {
        if (nominal > 0 && sigma > 0)
            all.Add(new Parameter(kind, index, path, nominal, sigma) { KindSigma = Math.Min(kindSigma, sigma) });
    }
}
