using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Tests.Papers;

public class ServiceRecordTests
{
    [Fact]
    public void The_record_of_a_repaired_unit_says_what_was_wrong_done_read_and_left()
    {
        var pdf = Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", PaperUnits.Repaired())));
        Pdf.Keep("repaired.pdf", pdf);
        var pages = Pdf.Text(pdf).Split('\f');
        string[] owner = ["Bench No. 7", "F-041", "R. Example", "What was wrong", "What was done", "What it can run", "125 W", "How to use it", "What was not tested", "Cautions", "Received, date"];
        Assert.All(owner, words => Assert.Contains(words, pages[0], StringComparison.Ordinal));
        var text = string.Join('\n', pages);
        string[] record = ["Waived in writing", "Waived by J. Bench", "confirmed", "dismissed", "renewed", "crumbles, wire to be seen", "Roller 2 is worn", "121.4 V", "14.31 V", "1: crack at the boss", "2: nut missing", "This photo is not to be had."];
        Assert.All(record, words => Assert.Contains(words, text, StringComparison.Ordinal));
    }
}
