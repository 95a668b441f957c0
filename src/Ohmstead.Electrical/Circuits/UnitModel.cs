using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>A type sheet indexed for computing: its elements, sliders and cores by number, and what varies from unit to unit.</summary>
public sealed class UnitModel
{
    /// <summary>Indexes a sheet.</summary>
    public UnitModel(TypeSheet sheet)
    {
        Sheet = sheet;
        Sliders =
        [
            .. sheet
                .Elements.Select((e, n) => (e, n))
                .Where(p => p.e is Winding)
                .SelectMany(p => ((Winding)p.e).Sliders.Select(s => (p.n, s))),
        ];
        WindingCores =
        [
            .. sheet.Elements.Select(e =>
                e is Winding { IsOnCore: true } w ? sheet.Cores.Select((c, n) => (c, n)).First(c => c.c.Id == w.Core).n : -1
            ),
        ];
        ReferenceWindings =
        [
            .. sheet.Cores.Select(c => sheet.Elements.Select((e, n) => (e, n)).First(p => p.e.Id == c.ReferenceWinding).n),
        ];
        Parameters = ParameterList.Of(sheet, Sliders);
        Nominal = new UnitValues(this);
    }

    /// <summary>The sheet.</summary>
    public TypeSheet Sheet { get; }

    /// <summary>Every slider, with the index of its winding.</summary>
    public ImmutableArray<(int Winding, Slider Slider)> Sliders { get; }

    /// <summary>For each element the index of its core; −1 when it is no winding on one.</summary>
    public ImmutableArray<int> WindingCores { get; }

    /// <summary>For each core the index of its reference winding.</summary>
    public ImmutableArray<int> ReferenceWindings { get; }

    /// <summary>What varies from unit to unit.</summary>
    public ImmutableArray<Parameter> Parameters { get; }

    /// <summary>The values of the nominal sound unit; copied before they are changed.</summary>
    public UnitValues Nominal { get; }
}
