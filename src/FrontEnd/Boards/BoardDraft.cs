using FrontEnd.Circuits;
using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>A board being written down, block by block; designators and packages come at the end.</summary>
internal sealed class BoardDraft
{
    private readonly List<BoardPart> _parts = [];
    private readonly List<DraftOpAmp> _opAmps = [];
    private readonly List<(BoardPart Part, int Assembly, string Role)> _pairs = [];
    private readonly Dictionary<string, string> _joined = new(StringComparer.Ordinal);
    private readonly List<(int Assembly, BoardBlock Block, string Net)> _testPoints = [];

    public BoardDraft(Design stated)
    {
        Stated = stated;
        Built = BuildableDesign.Of(stated);
        Findings = [.. Built.Findings];
    }

    public Design Stated { get; }

    public BuildableDesign Built { get; }

    public Design Design => Built.Design;

    public BoardChoices Choices => Design.Board;

    public List<Finding> Findings { get; }

    public List<string> Notes { get; } = [];

    /// <summary>The channel that is being written down, counted from 1; 0 for what all share and for the only channel.</summary>
    public int Assembly { get; private set; }

    public BoardBlock Block { get; private set; }

    /// <summary>The assembly of the first channel that is measured against the shared reference, of the first of all where each has its own; 0 for a
    /// board with one channel.</summary>
    public int FirstOnReference => Design.Channels == 1 ? 0
        : 1 + (Design.ChannelList.TakeWhile(channel => channel.Minus is not null).Count() % Design.Channels);

    public Board Finish()
    {
        for (int channel = 0; channel < Design.Channels; channel++)
        {
            Assembly = Design.Channels == 1 ? 0 : channel + 1;
            InputBlock.AddChannel(this, channel);
            AmplifierBlock.AddTo(this, channel);
            for (int stage = 0; stage < Design.Stages.Count; stage++)
            {
                StageBlock.AddTo(this, stage);
            }
        }

        Assembly = 0;
        InputBlock.AddReference(this);
        ConverterBlock.AddTo(this);
        GroundBlock.AddTo(this);
        SupplyBlock.AddTo(this);
        Pack();
        AddTestPoints();
        BoardPart[] numbered = Numbered();
        return new Board(Stated, Built, numbered, Findings, Notes);
    }

    /// <summary>Begins a block of the assembly that is being written down.</summary>
    public void In(BoardBlock block) => Block = block;

    /// <summary>A net of the assembly that is being written down.</summary>
    public string Net(string net) => Board.NetOf(Assembly, net);

    /// <summary>Makes two nets one, which keeps the first one's name.</summary>
    public void Join(string kept, string gone)
    {
        if (Resolved(kept) is var name && Resolved(gone) is var other && name != other)
        {
            _joined[other] = name;
        }
    }

    /// <summary>A resistor; one of 0 Ω joins its nets.</summary>
    public BoardPart? Resistor(string role, string what, string from, string to, Resistance value, Ratio tolerance, string key)
    {
        if (value.Ohms <= 0)
        {
            Join(from, to);
            return null;
        }

        return TwoPins(PieceClass.Resistor, role, what, from, to, value, tolerance, key);
    }

    /// <summary>A capacitor; one of 0 F is not fitted.</summary>
    public BoardPart? Capacitor(string role, string what, string from, string to, Capacitance value, Ratio tolerance, string key) =>
        value.Farads <= 0 ? null : TwoPins(PieceClass.Capacitor, role, what, from, to, value, tolerance, key);

    /// <summary>A capacitor between a supply and common, of the usual tolerance of its kind.</summary>
    public void Decouple(string role, string what, string net, Capacitance value, string key) =>
        Capacitor(role, what, net, Nets.Common, value, BoardTolerances.Decoupling, key);

    public BoardPart Add(PieceClass kind, string role, string what, IReadOnlyList<BoardPin> pins, string key = "", string description = "", string card = "") =>
        Put(new BoardPart("", Assembly, Block, role, kind, pins) { Where = Where(what), Key = key, Description = description, Card = card });

    /// <summary>An op-amp; <see cref="Pack"/> puts those of one kind into packages.</summary>
    /// <param name="role">What it is there.</param>
    /// <param name="what">The same in words.</param>
    /// <param name="model">Its values; null where the design has none.</param>
    /// <param name="key">The field of its card.</param>
    /// <param name="nets">Its non-inverting input, its inverting input, its output.</param>
    /// <param name="alone">True for one that stands apart from the board, at an electrode.</param>
    public void OpAmp(string role, string what, OpAmp? model, string key, (string Plus, string Minus, string Output) nets, bool alone = false) =>
        _opAmps.Add(new DraftOpAmp(Assembly, Block, role, Where(what), model, key, nets, alone));

    /// <summary>Replaces a piece that was just added.</summary>
    public void Change(BoardPart? part, Func<BoardPart, BoardPart> change)
    {
        if (part is not null)
        {
            _parts[_parts.IndexOf(part)] = change(part);
        }
    }

    /// <summary>Marks a piece as one of a pair with another of the same block.</summary>
    public void Pair(BoardPart? part, int assembly, string role)
    {
        if (part is not null)
        {
            _pairs.Add((part, assembly, role));
        }
    }

    /// <summary>Wants a test point on a net of the block that is being written down.</summary>
    public void TestPoint(string net) => _testPoints.Add((Assembly, Block, net));

    private BoardPart TwoPins(PieceClass kind, string role, string what, string from, string to, IQuantity value, Ratio tolerance, string key) =>
        Put(new BoardPart("", Assembly, Block, role, kind, [new("1", "", from), new("2", "", to)])
        {
            Where = Where(what), Key = key, Value = value, Tolerance = tolerance,
        });

    private BoardPart Put(BoardPart part)
    {
        _parts.Add(part);
        return part;
    }

    private string Where(string what) => $"{Block.Words(Design)}: {what}";

    private string Resolved(string net)
    {
        while (_joined.TryGetValue(net, out string? kept))
        {
            net = kept;
        }

        return net;
    }

    /// <summary>Op-amps of one kind and one assembly into packages, in the order of the path; what is left over in the last becomes a follower on
    /// the middle of the supply.</summary>
    private void Pack()
    {
        List<DraftOpAmp> waiting = [.. _opAmps];
        while (0 < waiting.Count)
        {
            DraftOpAmp first = waiting[0];
            DraftOpAmp[] together = [.. waiting.Where(first.SharesPackageWith).Take(first.Alone ? 1 : Choices.OpAmpsInPackage)];
            waiting.RemoveAll(one => together.Contains(one));
            In(first.Block);
            Assembly = first.Assembly;
            string role = BoardRoles.PackageOf(first.Role);
            OpAmpPackage package = OpAmpPackage.Of(first.Alone ? 1 : Choices.OpAmpsInPackage);
            List<BoardPin> pins = [package.Supply(true, Nets.Analogue), package.Supply(false, Nets.Common)];
            List<BoardSection> sections = [];
            for (int at = 0; at < package.Count; at++)
            {
                DraftOpAmp? used = at < together.Length ? together[at] : null;
                string output = used?.Nets.Output ?? "";
                (BoardPin plus, BoardPin minus, BoardPin pin) = package.Section(at, used?.Nets.Plus ?? Nets.Middle, used?.Nets.Minus ?? output, output);
                pins.AddRange([plus, minus, pin]);
                sections.Add(new BoardSection(package.Letter(at), used?.Block ?? first.Block, used?.Role ?? BoardRoles.Unused, first.Model, plus, minus, pin));
            }

            _parts.Add(new BoardPart("", Assembly, first.Block, role, PieceClass.OpAmps, pins)
            {
                Where = string.Join(", ", together.Select(one => one.Where)), Key = first.Key, Card = first.Model?.Card ?? "",
                Description = package.Words(together.Length), Sections = sections,
            });
            Decouple(BoardRoles.DecouplingOf(role), "decoupling of the op-amps", Nets.Analogue, Choices.Decoupling, DesignKeys.Board.Decoupling);
        }

        Assembly = 0;
    }

    private void AddTestPoints()
    {
        HashSet<string> there = new(StringComparer.Ordinal);
        foreach ((int assembly, BoardBlock block, string net) in _testPoints)
        {
            if (there.Add(Resolved(net)))
            {
                (Assembly, Block) = (assembly, block);
                Add(PieceClass.TestPoint, BoardRoles.TestPointOn(Nets.Drawn(net)), $"test point on {Nets.Drawn(Resolved(net))}", [new("1", "", net)]);
            }
        }

        Assembly = 0;
    }

    /// <summary>The pieces in their order with designators: one role of a block has one number in every assembly.</summary>
    private BoardPart[] Numbered()
    {
        BoardPart[] ordered = [.. _parts.OrderBy(part => part.Assembly == 0 ? int.MaxValue : part.Assembly).ThenBy(part => part.Block.Base)];
        Dictionary<(BoardBlock, string, string), int> numbers = [];
        Dictionary<(BoardBlock, string), int> last = [];
        Dictionary<BoardPart, string> names = new(ReferenceEqualityComparer.Instance);
        foreach (BoardPart part in ordered)
        {
            string letters = Letters(part.Class);
            if (!numbers.TryGetValue((part.Block, letters, part.Role), out int number))
            {
                number = last[(part.Block, letters)] = last.GetValueOrDefault((part.Block, letters), part.Block.Base) + 1;
                numbers[(part.Block, letters, part.Role)] = number;
            }

            names[part] = $"{letters}{number}";
        }

        return [.. ordered.Select(part => Named(part, names[part]) with { PairedWith = PairOf(part, ordered, names) })];
    }

    private string PairOf(BoardPart part, BoardPart[] all, Dictionary<BoardPart, string> names)
    {
        (BoardPart? _, int assembly, string role) = _pairs.FirstOrDefault(pair => pair.Part.Assembly == part.Assembly && pair.Part.Block == part.Block && pair.Part.Role == part.Role);
        return role is not null && all.FirstOrDefault(one => one.Assembly == assembly && one.Block == part.Block && one.Role == role) is { } other
            ? (other with { Designator = names[other] }).Name
            : "";
    }

    /// <summary>The piece with its designator and the nets that are left after joining. An op-amp that nothing uses has its own output net, named
    /// after itself.</summary>
    private BoardPart Named(BoardPart part, string designator)
    {
        Dictionary<BoardPin, BoardPin> pins = new(ReferenceEqualityComparer.Instance);
        foreach (BoardSection section in part.Sections.Where(section => section.Role == BoardRoles.Unused))
        {
            string own = Board.NetOf(part.Assembly, designator + section.Letter);
            pins[section.Minus] = section.Minus with { Net = own };
            pins[section.Output] = section.Output with { Net = own };
        }

        foreach (BoardPin pin in part.Pins)
        {
            pins.TryAdd(pin, pin with { Net = Resolved(pin.Net) });
        }

        return part with
        {
            Designator = designator,
            Pins = [.. part.Pins.Select(pin => pins[pin]).OrderBy(pin => pin.Number.Length).ThenBy(pin => pin.Number, StringComparer.Ordinal)],
            Sections = [.. part.Sections.Select(section => section with
                { Plus = pins[section.Plus], Minus = pins[section.Minus], Output = pins[section.Output] })],
        };
    }

    /// <summary>Class letters of IEEE 315, clause 22.4 (as quoted on secondary pages).</summary>
    private static string Letters(PieceClass kind) => kind switch
    {
        PieceClass.Resistor => "R",
        PieceClass.Capacitor => "C",
        PieceClass.Transistor => "Q",
        PieceClass.ClampDiodes => "D",
        PieceClass.Battery => "BT",
        PieceClass.Connector => "J",
        PieceClass.TestPoint => "TP",
        _ => "U",
    };

    private sealed record DraftOpAmp(
        int Assembly, BoardBlock Block, string Role, string Where, OpAmp? Model, string Key, (string Plus, string Minus, string Output) Nets, bool Alone)
    {
        public bool SharesPackageWith(DraftOpAmp other) => ReferenceEquals(this, other)
            || (!Alone && !other.Alone && Assembly == other.Assembly && WithoutRanges(Model) == WithoutRanges(other.Model));

        private static OpAmp? WithoutRanges(OpAmp? model) => model is null ? null : model with { Ranges = Fields.PartRanges.None };
    }
}
