using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>What the supply adds, what the parts draw and what has to be sent.</summary>
internal static class SupplyReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        AnalogDigitalConverter converter = design.Converter;
        if (converter.ReferenceNoise is { } reference)
        {
            double volts = converter.ReferenceVoltage?.Volts ?? converter.FullScale.Volts;
            double residue = reference.Volts * evaluation.Levels.DcAtConverter / volts / evaluation.GainMid;
            list.Number(
                ResultIds.Supply.ReferenceNoise, "reference noise acting on the dc at the converter, at the electrodes, rms", "",
                VoltageRms.FromVolts(residue), Equations.ReferenceNoise,
                () => $"{QuantityText.Format(reference)} · {QuantityText.Format(evaluation.Levels.DcAtConverter, "V")}/{QuantityText.Format(volts, "V")}/{QuantityText.FormatNumber(evaluation.GainMid, 4)}");
        }

        if (design.Supply.Ripple is { } ripple)
        {
            double landing = Folding.LandsAt(design.Supply.RippleFrequency.Hertz, converter.Rate.Hertz);
            bool inBand = design.Band.Low.Hertz <= landing && landing <= design.Band.High.Hertz;
            TextbookFigure hand = AmplifierFormulas.SupplyRipple(ripple, design.Amplifier.SupplyRejection);
            list.Number(
                ResultIds.Supply.RippleResidue, "supply ripple through the amplifier, at the electrodes, rms", "",
                VoltageRms.FromVolts(hand.Value), Equations.Ripple, () => hand.Substituted, hand,
                text: $"lands at {QuantityText.Format(landing, "Hz")}{(inBand ? ", in the band" : ", outside the band")}");
        }

        if (design.Supply.MidRailNoise is { } midRail && 0 < evaluation.Mains.AtInput.BodyCommonMode)
        {
            // What the body's common mode suffers, the mid-rail's noise suffers too: divider and CMRR at the mains frequency.
            double share = (evaluation.Mains.AtInput.Divider
                + evaluation.Mains.AtInput.Amplifier) / evaluation.Mains.AtInput.BodyCommonMode;
            list.Number(ResultIds.Supply.MidRailNoise, "the mid-rail's noise as common mode, at the electrodes, rms", "",
                VoltageRms.FromVolts(midRail.Volts * share), Equations.MidRail);
        }
    }

    /// <summary>Supply current of the whole device [A].</summary>
    public static double TotalAmperes(Design design)
    {
        (double perChannel, double shared) = Amperes(design);
        return (design.Channels * perChannel) + shared + design.Converter.SupplyCurrent.Amperes + design.Supply.OtherCurrent.Amperes;
    }

    /// <summary>Of the analogue path of one channel, and of what all channels share: buffers and driven ground.</summary>
    private static (double PerChannel, double Shared) Amperes(Design design)
    {
        double perChannel = design.Amplifier.SupplyCurrent.Amperes
            + design.Stages.Sum(stage => stage.Circuit().OpAmps.Sum(opAmp => opAmp.Model.SupplyCurrent.Amperes));
        double buffers = design.Leads.Sum(lead => lead.Buffer?.OpAmp.SupplyCurrent.Amperes ?? 0);
        double drive = design.GroundDrive.Kind == Amplifier.GroundKind.Driven ? design.GroundDrive.SupplyCurrent.Amperes : 0;
        return (perChannel, buffers + drive);
    }

    /// <summary>What the whole device draws and sends.</summary>
    public static void AddPower(ResultList list, Design design)
    {
        (double perChannel, double shared) = Amperes(design);
        double total = TotalAmperes(design);
        list.Number(
            ResultIds.Power.SupplyCurrent, "supply current", "I", Current.FromAmperes(total), Equations.SupplyCurrent,
            () => $"{design.Channels} · {QuantityText.Format(perChannel, "A")} + {QuantityText.Format(shared, "A")} + {QuantityText.Format(design.Converter.SupplyCurrent)} + {QuantityText.Format(design.Supply.OtherCurrent)}",
            text: $"analogue path {QuantityText.Format(design.Channels * perChannel, "A")}, buffers and driven ground {QuantityText.Format(shared, "A")}, converter {QuantityText.Format(design.Converter.SupplyCurrent)}, the rest {QuantityText.Format(design.Supply.OtherCurrent)}");
        if (design.Supply.BatteryCapacity is { } capacity && 0 < total)
        {
            TextbookFigure hand = PowerFormulas.BatteryLife(capacity, design.Supply.UsableShare, Current.FromAmperes(total));
            list.Number(ResultIds.Power.BatteryLife, "battery life", "t", Duration.FromSeconds(hand.Value), Equations.BatteryLife,
                () => hand.Substituted, hand);
        }

        TextbookFigure rate = ConverterFormulas.DataRate(design.Channels, design.Converter.Rate, BitCount.FromBits(design.Converter.Bits),
            design.Supply.DataOverhead);
        list.Number(ResultIds.Data.BitRate, "data rate with overhead", "", DataRate.FromBitsPerSecond(rate.Value), Equations.BitRate,
            () => rate.Substituted, rate);
    }
}
