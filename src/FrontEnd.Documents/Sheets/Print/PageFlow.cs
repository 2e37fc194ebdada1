using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>Puts pieces onto pages, one below the other or side by side, and begins a new page where no more fits.</summary>
/// <param name="paper">A4 where none is given.</param>
internal sealed class PageFlow(Paper? paper = null)
{
    /// <summary>Left and right of what is printed, in points.</summary>
    public const double Margin = 30;

    /// <summary>Above it, and below, where the foot stands.</summary>
    private const double Top = 28, Bottom = 36;

    /// <summary>A pair that would begin in so small a rest of the page begins the next.</summary>
    private const double SmallRest = 0.35;

    private readonly List<Picture> _pages = [];
    private readonly List<Bookmark> _bookmarks = [];
    private Picture _page = new(0, 0, "");
    private double _top, _y, _bottom;
    private Piece? _stamp;

    public IReadOnlyList<Picture> Pages => _pages;

    public IReadOnlyList<Bookmark> Bookmarks => _bookmarks;

    /// <summary>Room between the margins, in points.</summary>
    public double Width => _page.Width - (2 * Margin);

    /// <summary>Room for one piece on a page of its own, in points.</summary>
    public double Height => _bottom - _top;

    private bool IsFresh => _y <= _top;

    /// <summary>Begins a page; those that it runs on to are like it.</summary>
    /// <param name="title">Its entry in the document's contents.</param>
    /// <param name="stamp">Stands at the top of each of them; null for nothing.</param>
    public void Begin(string title, bool isLandscape, Func<double, Piece>? stamp)
    {
        Paper used = paper ?? Paper.A4;
        (double width, double height) = isLandscape ? (used.Long, used.Short) : (used.Short, used.Long);
        _stamp = stamp?.Invoke(width - (2 * Margin));
        Begin(width, height);
        _bookmarks.Add(new Bookmark(HtmlSheet.Capital(title), 0, _pages.Count - 1, 0));
    }

    /// <summary>Goes on on a new page, unless one begins there.</summary>
    public void NextPage()
    {
        if (!IsFresh)
        {
            Continue();
        }
    }

    /// <summary>Pieces one below the other.</summary>
    /// <param name="after">Room for what follows the last of them where that must not stand last, in points.</param>
    public void Add(IReadOnlyList<Piece> pieces, double after = 0)
    {
        for (int next = 0; next < pieces.Count;)
        {
            Fit fit = Fit.Of(pieces, next, _y, _bottom, IsFresh, after);
            Draw(fit, Margin);
            (next, _y) = (fit.Next, fit.End);
            if (next < pieces.Count)
            {
                Continue();
            }
        }
    }

    /// <summary>Two columns, each running on by itself.</summary>
    public void AddBeside(IReadOnlyList<Piece> left, IReadOnlyList<Piece> right, double rightColumn)
    {
        double needed = Math.Max(Total(left), Total(right));
        if (_bottom - _y < needed && needed <= Height && _bottom - _y < SmallRest * Height)
        {
            Continue();
        }

        int nextLeft = 0, nextRight = 0;
        while (true)
        {
            Fit first = Fit.Of(left, nextLeft, _y, _bottom, IsFresh), second = Fit.Of(right, nextRight, _y, _bottom, IsFresh);
            Draw(first, Margin);
            Draw(second, Margin + rightColumn);
            (nextLeft, nextRight, _y) = (first.Next, second.Next, Math.Max(first.End, second.End));
            if (nextLeft == left.Count && nextRight == right.Count)
            {
                return;
            }

            Continue();
        }
    }

    /// <summary>Columns of about the same height, read one after the other.</summary>
    /// <param name="step">From the left side of one to that of the next, in points.</param>
    public void AddColumns(IReadOnlyList<Piece> pieces, int columns, double step)
    {
        const double Finer = 2;
        for (int next = 0; next < pieces.Count;)
        {
            double bottom = _y + (Total([.. pieces.Skip(next)]) / columns);
            Fit[] fits = Fits(bottom);
            while (fits[^1].Next < pieces.Count && bottom < _bottom)
            {
                bottom = Math.Min(_bottom, bottom + Finer);
                fits = Fits(bottom);
            }

            for (int column = 0; column < columns; column++)
            {
                Draw(fits[column], Margin + (column * step));
            }

            (next, _y) = (fits[^1].Next, fits.Max(fit => fit.End));
            if (next < pieces.Count)
            {
                Continue();
            }

            Fit[] Fits(double lowest)
            {
                Fit[] all = new Fit[columns];
                for (int column = 0; column < columns; column++)
                {
                    all[column] = Fit.Of(pieces, column == 0 ? next : all[column - 1].Next, _y, Math.Min(lowest, _bottom), IsFresh);
                }

                return all;
            }
        }
    }

    /// <summary>Room that is left free, unless a page begins there.</summary>
    public void Skip(double height) => _y = IsFresh ? _y : _y + height;

    private static double Total(IReadOnlyList<Piece> pieces) => pieces.Sum(piece => piece.Before + piece.Height);

    private void Continue() => Begin(_page.Width, _page.Height);

    private void Begin(double width, double height)
    {
        _page = new Picture(width, height, "");
        _pages.Add(_page);
        (_top, _bottom) = (Top, height - Bottom);
        if (_stamp is { } stamp)
        {
            stamp.Draw(_page, Margin, Top);
            _top += stamp.Height;
        }

        _y = _top;
    }

    private void Draw(Fit fit, double x)
    {
        foreach ((Piece piece, double y) in fit.Placed)
        {
            if (piece.Bookmark is { } text)
            {
                _bookmarks.Add(new Bookmark(text, 1, _pages.Count - 1, y));
            }

            piece.Draw(_page, x, y);
        }
    }

    /// <summary>As many pieces as there is room for.</summary>
    /// <param name="Next">The first that is left.</param>
    /// <param name="End">Below the last.</param>
    private sealed record Fit(int Next, IReadOnlyList<(Piece Piece, double Y)> Placed, double End)
    {
        /// <param name="after">Room that is needed below the last piece where that must not stand last.</param>
        /// <param name="isFresh">The page begins here, so that what is too large for any page is placed all the same.</param>
        public static Fit Of(IReadOnlyList<Piece> pieces, int next, double y, double bottom, bool isFresh, double after = 0)
        {
            List<(Piece, double)> placed = [];
            while (next < pieces.Count)
            {
                // What must not stand last goes with what follows it.
                int end = next;
                while (pieces[end].KeepsNext && end + 1 < pieces.Count)
                {
                    end++;
                }

                Piece? head = placed.Count == 0 ? pieces[next].Head : null;
                double needed = (head?.Height ?? 0) + pieces.Skip(next).Take(end + 1 - next).Sum(piece => piece.Before + piece.Height)
                    - (placed.Count == 0 && isFresh ? pieces[next].Before : 0)
                    + (pieces[end].KeepsNext ? after : 0);
                if (bottom < y + needed - 0.001 && !(placed.Count == 0 && isFresh))
                {
                    break;
                }

                if (head is not null)
                {
                    placed.Add((head, y));
                    y += head.Height;
                }

                for (; next <= end; next++)
                {
                    y += placed.Count == 0 && isFresh ? 0 : pieces[next].Before;
                    placed.Add((pieces[next], y));
                    y += pieces[next].Height;
                }
            }

            return new Fit(next, placed, y);
        }
    }
}
