using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>Something that was seen, read, decided or done on a unit. The words of "kind" are part of the file format.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(TakenIn), "taken-in")]
[JsonDerivedType(typeof(PracticeBegun), "practice")]
[JsonDerivedType(typeof(PlateRead), "plate")]
[JsonDerivedType(typeof(TerminalNamed), "terminal")]
[JsonDerivedType(typeof(CarriedOver), "carried-over")]
[JsonDerivedType(typeof(SheetKept), "sheet-kept")]
[JsonDerivedType(typeof(CardChanged), "card")]
[JsonDerivedType(typeof(SignAnswered), "sign")]
[JsonDerivedType(typeof(ConditionNoted), "condition")]
[JsonDerivedType(typeof(NotLookedAt), "not-looked-at")]
[JsonDerivedType(typeof(DamagePinned), "damage")]
[JsonDerivedType(typeof(PhotoAdded), "photo")]
[JsonDerivedType(typeof(BenchSet), "bench")]
[JsonDerivedType(typeof(ReadingEntered), "reading")]
[JsonDerivedType(typeof(ReadingWaived), "waived")]
[JsonDerivedType(typeof(SupplyStated), "supply")]
[JsonDerivedType(typeof(RewireChecked), "rewire-checked")]
[JsonDerivedType(typeof(WireChecked), "wire-checked")]
[JsonDerivedType(typeof(PowerTried), "power")]
[JsonDerivedType(typeof(SweepTaken), "sweep")]
[JsonDerivedType(typeof(TestRead), "test")]
[JsonDerivedType(typeof(TestNotTaken), "test-not-taken")]
[JsonDerivedType(typeof(HeatRunBegun), "heat-begun")]
[JsonDerivedType(typeof(HeatRead), "heat-reading")]
[JsonDerivedType(typeof(HeatUnplugged), "heat-unplugged")]
[JsonDerivedType(typeof(HeatCooled), "heat-cooling")]
[JsonDerivedType(typeof(HeatRunEnded), "heat-ended")]
[JsonDerivedType(typeof(LoadForHours), "load-for-hours")]
[JsonDerivedType(typeof(BreakerStarted), "breaker-started")]
[JsonDerivedType(typeof(BreakerTimed), "breaker-timed")]
[JsonDerivedType(typeof(FindingJudged), "finding")]
[JsonDerivedType(typeof(PartChanged), "part")]
[JsonDerivedType(typeof(PartDecided), "decided")]
[JsonDerivedType(typeof(LooksNoted), "looks")]
[JsonDerivedType(typeof(EstimateMade), "estimate")]
[JsonDerivedType(typeof(GoAheadGiven), "go-ahead")]
[JsonDerivedType(typeof(Billed), "billed")]
[JsonDerivedType(typeof(JointSeen), "joint")]
[JsonDerivedType(typeof(WiringFrozen), "wiring-frozen")]
[JsonDerivedType(typeof(WayChosen), "way")]
[JsonDerivedType(typeof(TakenOff), "off")]
[JsonDerivedType(typeof(PieceNoted), "piece")]
[JsonDerivedType(typeof(PutBack), "back")]
[JsonDerivedType(typeof(StageClosed), "stage")]
[JsonDerivedType(typeof(Returned), "returned")]
[JsonDerivedType(typeof(PaperMade), "paper")]
[JsonDerivedType(typeof(LayoutStated), "layout")]
[JsonDerivedType(typeof(HumRecorded), "hum")]
[JsonDerivedType(typeof(Noted), "note")]
[JsonDerivedType(typeof(Corrected), "corrected")]
public abstract record Fact;

/// <summary>A unit came in. The first entry of every journal.</summary>
/// <param name="Tag">What is written on the tag tied to it.</param>
/// <param name="SheetId">Its type sheet; empty while the kind is not known.</param>
/// <param name="Owner">Whose it is.</param>
/// <param name="Complaint">What the owner says, in their words.</param>
public sealed record TakenIn(string Tag, string SheetId, string Owner, string Complaint) : Fact;

/// <summary>The card of the unit was written anew: every field as it now stands.</summary>
/// <param name="Promised">When it was promised, in the owner's words.</param>
public sealed record CardChanged(string Tag, string SheetId, string Owner, string Contact, string Complaint, string Promised) : Fact;

/// <summary>An observation of the sheet was answered.</summary>
/// <param name="ObservationId">The sheet's id of it.</param>
public sealed record SignAnswered(string ObservationId, Answer Answer) : Fact;

/// <summary>What a question of the look-over was answered with.</summary>
public enum Answer
{
    /// <summary>Not known.</summary>
    Unsure,

    /// <summary>Seen, heard, felt or told.</summary>
    Yes,

    /// <summary>Looked for and not there.</summary>
    No,
}

/// <summary>The state of a part that is no circuit element: cord, strain relief, sleeves, groove, posts, case, handles.</summary>
/// <param name="Item">Key of the part in the shop's look-over list.</param>
/// <param name="Words">What is seen, in words.</param>
/// <param name="Photo">Hash of a photo; empty for none.</param>
public sealed record ConditionNoted(string Item, string Words, Decision Decision, string Photo) : Fact
{
    /// <summary>What the part is called, as the shop called it then; null in what was entered before it was kept.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>What is to be done with a part.</summary>
public enum Decision
{
    /// <summary>Nothing decided.</summary>
    Open,

    /// <summary>It stays as it is.</summary>
    Leave,

    /// <summary>It stays, and is looked at again.</summary>
    Watch,

    /// <summary>It is to be renewed.</summary>
    Renew,

    /// <summary>It was renewed.</summary>
    Renewed,

    /// <summary>It was not renewed and is whole again: sleeved, covered, cemented.</summary>
    MadeGood,
}

/// <summary>A part of the look-over that can endanger could not be looked at; somebody answers for that by name.</summary>
/// <param name="Item">Key of the part in the shop's look-over list.</param>
/// <param name="Why">Why it could not be looked at.</param>
/// <param name="SignedBy">Who answers for it.</param>
public sealed record NotLookedAt(string Item, string Why, string SignedBy) : Fact
{
    /// <summary>What the part is called, as the shop called it then; null in what was entered before it was kept.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>Damage marked at a place on a photo.</summary>
/// <param name="Photo">Hash of the photo.</param>
/// <param name="X">Place across [0..1].</param>
/// <param name="Y">Place down [0..1].</param>
public sealed record DamagePinned(string Photo, double X, double Y, string Words) : Fact;

/// <summary>A photo was taken.</summary>
/// <param name="Photo">SHA-256 of the file, lower-case hexadecimal.</param>
/// <param name="Title">What it shows; may be empty.</param>
/// <param name="About">Id of the element, reading or look-over item it belongs to; empty for the unit.</param>
public sealed record PhotoAdded(string Photo, string Title, string About) : Fact;

/// <summary>How the bench really stands; carried forward into every later reading.</summary>
public sealed record BenchSet(BenchState Bench) : Fact;

/// <summary>A reading was taken, or tried.</summary>
/// <param name="ReadingId">The sheet's id of it.</param>
/// <param name="Bench">What was really so while it was taken.</param>
public sealed record ReadingEntered(string ReadingId, Shown Shown, BenchState Bench) : Fact
{
    /// <summary>What was read, in words, on a unit whose type was not known; null where a type sheet has them.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>A gate that has no instrument here was waived, in writing. A measured failure cannot be.</summary>
/// <param name="Why">Why it cannot be read.</param>
/// <param name="WaivedBy">Who answers for it.</param>
/// <param name="Instead">What was done instead.</param>
public sealed record ReadingWaived(string ReadingId, string Why, string WaivedBy, string Instead) : Fact;

/// <summary>A finding was judged by hand.</summary>
/// <param name="Element">Element or slider.</param>
/// <param name="Mode">Fault mode.</param>
public sealed record FindingJudged(string Element, string Mode, Judgement Judgement, string Words) : Fact;

/// <summary>What the hand and the eye say of a finding.</summary>
public enum Judgement
{
    /// <summary>No longer judged.</summary>
    Open,

    /// <summary>Seen to be so.</summary>
    Confirmed,

    /// <summary>Seen not to be so.</summary>
    Dismissed,
}

/// <summary>A stage of the job was closed, or opened again.</summary>
public sealed record StageClosed(Stage Stage, bool IsClosed, string Words) : Fact;

/// <summary>The unit went back to its owner.</summary>
/// <param name="Manner">Working, or not to be plugged in.</param>
/// <param name="By">Who handed it back.</param>
public sealed record Returned(ReturnManner Manner, string By) : Fact;

/// <summary>How a unit went back.</summary>
public enum ReturnManner
{
    /// <summary>Working, as tested: nothing was open.</summary>
    Working,

    /// <summary>With a paper and a label that forbid to plug it in.</summary>
    NotToBePluggedIn,
}

/// <summary>The stages of the job, in their order.</summary>
public enum Stage
{
    /// <summary>Intake and look-over.</summary>
    LookOver,

    /// <summary>Readings.</summary>
    Readings,

    /// <summary>Findings and repair.</summary>
    Findings,

    /// <summary>Taking apart and putting back together.</summary>
    TakingApart,

    /// <summary>The wiring recorded, and the check before mains.</summary>
    Wiring,

    /// <summary>What is tested against limits before it goes back.</summary>
    Tests,

    /// <summary>Papers and handing back.</summary>
    Papers,
}

/// <summary>A paper was made.</summary>
/// <param name="Paper">Which: "service-record" or "bench-sheet".</param>
public sealed record PaperMade(string Paper) : Fact
{
    /// <summary>The paper that ends the job.</summary>
    public const string ServiceRecord = "service-record";
}

/// <summary>Free words.</summary>
public sealed record Noted(string Words) : Fact;

/// <summary>An earlier entry was wrong: it no longer counts; what is right stands here, or nothing when it was taken back.</summary>
/// <param name="EntryId">The entry that no longer counts.</param>
/// <param name="Instead">What counts in its place.</param>
public sealed record Corrected(Guid EntryId, Fact? Instead) : Fact;

/// <summary>An entry of a later version of the tool: kept word for word, not understood.</summary>
public sealed record Unread(string Text) : Fact;
