using FrontEnd.Amplifier;
using FrontEnd.Circuits;

namespace FrontEnd.Catalogue;

/// <content>Checks of the parts against what their cards allow.</content>
public static partial class DesignCheck
{
    private sealed partial class Checker
    {
        /// <summary>A part with a range of supplies.</summary>
        /// <param name="What">"the amplifier".</param>
        /// <param name="Key">Its card, or its table.</param>
        private sealed record SuppliedPart(string What, string Card, string Key, SupplyRange Range)
        {
            public string Words => Card.Length == 0 ? What : $"{What} ({Card})";
        }

        /// <summary>A part has the gains that it has, and works on the supplies that it is made for.</summary>
        public void Parts()
        {
            Packages();
            Gains(design.Amplifier);

            // What one card says of several op-amps is said once.
            foreach (SuppliedPart part in SuppliedParts().DistinctBy(part => part.Card.Length == 0 ? (part.Key, part.Range) : (part.Card, part.Range)))
            {
                bool isApart = part.Key == DesignKeys.Converter.Card && design.Converter.OwnSupply is not null;
                if (isApart)
                {
                    Apart(part, design.Converter.OwnSupply!.Value);
                }
                else
                {
                    OnTheRails(part);
                }
            }
        }

        /// <summary>Packages hold one, two or four op-amps.</summary>
        private void Packages()
        {
            if (design.Board.OpAmpsInPackage == 3)
            {
                Error(Messages.OddPackage, DesignKeys.Board.OpAmpsInPackage, "there are no packages of 3 op-amps", "they come in ones, twos and fours",
                    $"set {DesignKeys.Board.OpAmpsInPackage} to 1, 2 or 4", DesignKeys.Board.OpAmpsInPackage);
            }
        }

        private void Gains(DifferentialAmplifier amplifier)
        {
            if (amplifier.NearestGain is not { } nearest || Math.Abs((nearest / amplifier.Gain) - 1) < 1e-9)
            {
                return;
            }

            string part = amplifier.Card.Length == 0 ? "the amplifier" : amplifier.Card;
            string gains = string.Join(", ", amplifier.Gains!.Select(gain => QuantityText.FormatTrimmed(gain, "1", 6)));
            Warning(Messages.GainNotOffered, DesignKeys.Amplifier.Gain,
                $"amplifier.gain {QuantityText.FormatTrimmed(amplifier.Gain, "1", 6)} is not one of the gains of {part}: {gains}",
                "its gains are fixed by its maker, not set by a resistor",
                $"set {QuantityText.FormatTrimmed(nearest, "1", 6)}, the nearest, or use another amplifier", DesignKeys.Amplifier.Card, DesignKeys.Amplifier.Gains);
        }

        private void OnTheRails(SuppliedPart part)
        {
            (Voltage lowest, Voltage highest) = (design.Supply.Lowest, design.Supply.Highest);
            if (part.Range.IsMissedBy(lowest))
            {
                string least = QuantityText.FormatPart(part.Range.Lowest);
                Warning(Messages.SupplyOutsidePart, DesignKeys.Supply.Lowest,
                    $"supply.lowest {QuantityText.FormatPart(lowest)} is below {least}, the minimum supply of {part.Words}",
                    "the part's figures do not hold below it", $"set supply.lowest to at least {least}, or use another part", part.Key);
            }

            if (part.Range.IsExceededBy(lowest))
            {
                Destroyed(part, DesignKeys.Supply.Lowest, lowest);
            }
            else if (design.Supply.RailsHighest is { } rails)
            {
                if (part.Range.IsExceededBy(rails))
                {
                    Destroyed(part, DesignKeys.Supply.RailsHighest, rails);
                }
            }
            else if (part.Range.IsExceededBy(highest))
            {
                string most = QuantityText.FormatPart(part.Range.Highest);
                Warning(Messages.SupplyOutsidePart, DesignKeys.Supply.Highest,
                    $"supply.highest {QuantityText.FormatPart(highest)} is above {most}, the maximum that {part.Words} withstands",
                    "if it reaches the analogue rails, it destroys the part",
                    $"set supply.rails-highest to at most {most} if a regulator keeps the rails below that; otherwise lower supply.highest to {most}, or use another part",
                    part.Key);
            }
        }

        private void Apart(SuppliedPart part, Voltage own)
        {
            if (part.Range.IsExceededBy(own))
            {
                Destroyed(part, DesignKeys.Converter.OwnSupply, own);
            }
            else if (part.Range.IsMissedBy(own))
            {
                string least = QuantityText.FormatPart(part.Range.Lowest);
                Warning(Messages.SupplyOutsidePart, DesignKeys.Converter.OwnSupply,
                    $"converter.own-supply {QuantityText.FormatPart(own)} is below {least}, the minimum supply of {part.Words}",
                    "the part's figures do not hold below it", $"set it to at least {least}, or use another part", part.Key);
            }
        }

        private void Destroyed(SuppliedPart part, string key, Voltage volts)
        {
            string most = QuantityText.FormatPart(part.Range.Highest);
            Error(Messages.SupplyDestroysPart, key,
                $"{key} {QuantityText.FormatPart(volts)} is above {most}, the maximum that {part.Words} withstands", "the part would be destroyed",
                $"set it to at most {most}, or use another part", part.Key);
        }

        private IEnumerable<SuppliedPart> SuppliedParts()
        {
            yield return new("the amplifier", design.Amplifier.Card, DesignKeys.Amplifier.Card, design.Amplifier.SupplyRange);
            foreach ((string which, Electrodes.ElectrodeBuffer? buffer) in new[] { ("active", design.Electrodes.ActiveBuffer),
                ("reference", design.Electrodes.ReferenceBuffer) })
            {
                if (buffer is not null)
                {
                    yield return new($"the buffer at the {which} electrode", buffer.OpAmp.Card, $"electrodes.{which}-buffer", buffer.OpAmp.SupplyRange);
                }
            }

            for (int i = 0; i < design.Stages.Count; i++)
            {
                if (design.Stages[i].FittedOpAmp is { } opAmp)
                {
                    yield return new($"the op-amp of {design.Stages[i].Name}", opAmp.Card, $"stages[{i + 1}]", opAmp.SupplyRange);
                }
            }

            yield return new("the converter", design.Converter.Card, DesignKeys.Converter.Card, design.Converter.SupplyRange);
        }
    }
}
