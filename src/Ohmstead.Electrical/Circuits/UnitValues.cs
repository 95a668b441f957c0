namespace Ohmstead.Electrical.Circuits;

/// <summary>
/// The numbers of one unit, by element, slider and core: what a fault or a parameter's spread changes, while the wiring
/// stays. A mutable scratch of the solver; made by copying, never shared between threads.
/// </summary>
public sealed class UnitValues
{
    /// <summary>Resistance by element [Ω]; of a switch while closed, of what has a path across it its series resistance.</summary>
    internal readonly double[] Ohms;

    /// <summary>By element: of a switch its open resistance, of what has a path across it that path [Ω], of a winding its leakage inductance [H].</summary>
    internal readonly double[] Second;

    /// <summary>By element: a winding's turns (0 on no core), a rectifier's saturation current [A], or what else its law goes by.</summary>
    internal readonly double[] Third;

    /// <summary>By element: a tungsten lamp that is broken, a winding or rectifier whose ends are exchanged.</summary>
    internal readonly bool[] Flag;

    /// <summary>By element: how a switch is stuck (0 not, 1 open, 2 closed).</summary>
    internal readonly byte[] Stuck;

    /// <summary>By element: shorted turns of a winding, counted from its dotted end.</summary>
    internal readonly double[] ShortedTurns;

    /// <summary>By element: the turn at which a winding is broken; NaN when it is whole.</summary>
    internal readonly double[] BrokenAtTurn;

    /// <summary>Contact resistance by slider [Ω].</summary>
    internal readonly double[] ContactOhms;

    /// <summary>Loss resistance by core [Ω].</summary>
    internal readonly double[] LossOhms;

    /// <summary>Factor on the magnetising current by core.</summary>
    internal readonly double[] Excitation;

    internal UnitValues(UnitModel model)
    {
        var sheet = model.Sheet;
        var count = sheet.Elements.Length;
        Ohms = new double[count];
        Second = new double[count];
        Third = new double[count];
        Flag = new bool[count];
        Stuck = new byte[count];
        ShortedTurns = new double[count];
        BrokenAtTurn = new double[count];
        Array.Fill(BrokenAtTurn, double.NaN);
        ContactOhms = [.. model.Sliders.Select(s => s.Slider.ContactOhms)];
        LossOhms = [.. sheet.Cores.Select(c => c.LossOhms)];
        Excitation = [.. sheet.Cores.Select(_ => 1.0)];
        for (var n = 0; n < count; n++)
            (Ohms[n], Second[n], Third[n]) = ElementNumbers.Of(sheet.Elements[n]);
    }

    private UnitValues(UnitValues other)
    {
        Ohms = (double[])other.Ohms.Clone();
        Second = (double[])other.Second.Clone();
        Third = (double[])other.Third.Clone();
        Flag = (bool[])other.Flag.Clone();
        Stuck = (byte[])other.Stuck.Clone();
        ShortedTurns = (double[])other.ShortedTurns.Clone();
        BrokenAtTurn = (double[])other.BrokenAtTurn.Clone();
        ContactOhms = (double[])other.ContactOhms.Clone();
        LossOhms = (double[])other.LossOhms.Clone();
        Excitation = (double[])other.Excitation.Clone();
    }

    /// <summary>A copy.</summary>
    public UnitValues Copy() => new(this);

    /// <summary>Takes every number of the unit into a key.</summary>
    internal void AddTo(ref WaveKey key)
    {
        foreach (
            var numbers in (ReadOnlySpan<double[]>)[Ohms, Second, Third, ShortedTurns, BrokenAtTurn, ContactOhms, LossOhms, Excitation]
        )
            key.Add(numbers);
        for (var n = 0; n < Flag.Length; n++)
            key.Add(((ulong)Stuck[n] << 1) | (Flag[n] ? 1UL : 0UL));
    }

    /// <summary>Makes this equal to <paramref name="other"/> of the same model, without allocating.</summary>
    public void CopyFrom(UnitValues other)
    {
        other.Ohms.CopyTo(Ohms, 0);
        other.Second.CopyTo(Second, 0);
        other.Third.CopyTo(Third, 0);
        other.Flag.CopyTo(Flag, 0);
        other.Stuck.CopyTo(Stuck, 0);
        other.ShortedTurns.CopyTo(ShortedTurns, 0);
        other.BrokenAtTurn.CopyTo(BrokenAtTurn, 0);
        other.ContactOhms.CopyTo(ContactOhms, 0);
        other.LossOhms.CopyTo(LossOhms, 0);
        other.Excitation.CopyTo(Excitation, 0);
    }

    /// <summary>Multiplies a parameter's present value by <paramref name="factor"/>.</summary>
    public void Scale(Parameter parameter, double factor)
    {
        ref var value = ref ElementNumbers.Slot(this, parameter);
        value *= factor;
    }

    /// <summary>A parameter's present value (the factor, for an excitation table).</summary>
    public double this[Parameter parameter] => ElementNumbers.Slot(this, parameter);
}
