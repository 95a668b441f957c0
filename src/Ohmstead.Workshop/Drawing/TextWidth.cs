namespace Ohmstead.Workshop.Drawing;

/// <summary>How wide a text is in the typeface that comes along, and names broken to the room they have.</summary>
internal static class TextWidth
{
    /// <summary>Signs that the tables do not know are taken as wide as a wide letter.</summary>
    private const double Unknown = 0.9;

    /// <summary>A little room, so that rounding in a browser makes no two names touch.</summary>
    private const double Air = 1.03;

    /// <summary>Advance widths of the signs from blank to tilde [thousandths of the size], measured in a browser.</summary>
    private static readonly short[] Regular = Table(
        "280 286 301 651 592 919 731 160 299 299 485 606 210 362 210 387 648 407 548 576 614 588 598 510 615 595 210 210 553 628 553 480 778 626 613 645 669 569 552 694 694 392 512 631 541 824 693 714 592 724 614 592 558 690 593 856 623 575 607 317 387 344 552 372 243 525 566 485 564 538 314 558 550 252 245 492 262 845 550 548 566 574 349 471 326 540 461 684 481 449 460 344 237 344 555"
    );

    private static readonly short[] Bold = Table(
        "312 303 390 765 610 969 725 210 335 335 485 595 271 373 272 440 659 440 579 600 624 607 626 537 624 571 272 272 569 612 569 547 781 678 643 658 688 597 566 718 701 424 561 663 552 858 717 746 629 756 650 610 607 686 644 886 685 650 618 340 440 344 582 400 288 552 596 510 596 563 365 593 571 300 259 555 318 882 571 576 596 599 376 508 376 567 530 740 539 521 505 381 254 381 537"
    );

    /// <summary>Width of one line of bold letters.</summary>
    public static double OfBold(string words, double size) => Sum(words, Bold) * size;

    /// <summary>Width of one line, in the unit of <paramref name="size"/>.</summary>
    public static double Of(string words, double size) => Sum(words, Regular) * size;

    /// <summary>Width of the widest of several bold lines; 0 for none.</summary>
    public static double OfBold(IEnumerable<string> lines, double size) => lines.Select(l => OfBold(l, size)).DefaultIfEmpty(0).Max();

    /// <summary>
    /// A name on as few lines of bold letters as fit into <paramref name="room"/>, broken after blanks and hyphens and as
    /// evenly as these allow. One word that is wider stays whole.
    /// </summary>
    public static string[] Wrap(string words, double size, double room)
    {
        var lines = Broken(words, size, room);
        // The same number of lines in less room stands more evenly.
        for (var less = room - (size / 2); less > size; less -= size / 2)
        {
            var tighter = Broken(words, size, less);
            if (tighter.Length > lines.Length)
                break;
            lines = tighter;
        }
        return lines;
    }

    private static string[] Broken(string words, double size, double room)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Words(words))
        {
            if (line.Length > 0 && OfBold((line + word).TrimEnd(), size) > room)
            {
                lines.Add(line.TrimEnd());
                line = "";
            }
            line += word;
        }
        return line.Trim().Length > 0 ? [.. lines, line.TrimEnd()] : [.. lines];
    }

    /// <summary>The words, each with the blank or hyphen after it.</summary>
    private static IEnumerable<string> Words(string text)
    {
        var start = 0;
        for (var n = 1; n <= text.Length; n++)
        {
            if (n < text.Length && text[n - 1] is not ('-' or ' '))
                continue;
            yield return text[start..n];
            start = n;
        }
    }

    private static double Sum(string words, short[] table)
    {
        var sum = 0.0;
        foreach (var letter in words)
            sum += letter - ' ' is >= 0 and var at && at < table.Length ? table[at] / 1000.0 : Unknown;
        return Air * sum;
    }

    private static short[] Table(string widths) =>
        [.. widths.Split(' ').Select(w => short.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
}
