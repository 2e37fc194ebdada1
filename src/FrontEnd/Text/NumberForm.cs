namespace FrontEnd.Text;

/// <summary>How the numbers of a kind are printed.</summary>
internal enum NumberForm
{
    /// <summary>With engineering prefixes: 4.70 kΩ.</summary>
    Prefixed,

    /// <summary>Power of ten, as a squared unit takes no readable prefix: 2.50e-12 V²/Hz.</summary>
    Scientific,

    /// <summary>No prefix, decimals limited: dB. A difference near zero is not stretched to full digits.</summary>
    Plain,

    /// <summary>As <see cref="Plain"/>, held in kelvins and printed in °C: 33.0 °C.</summary>
    Temperature,

    /// <summary>As <see cref="Plain"/>, unit written close to the number: 45.0°.</summary>
    Degrees,

    /// <summary>A whole number has no decimals: 12 bit.</summary>
    Count,

    /// <summary>% below 1, × from 1 on.</summary>
    Fraction,

    /// <summary>% also from 1 on: 120 %.</summary>
    Percent,

    /// <summary>No unit at all; a whole number has no decimals: 12, 0.492.</summary>
    Bare,

    /// <summary>s with prefixes below two minutes, then min, then h.</summary>
    Time,

    /// <summary>mAh and Ah from 1 µAh on, C below.</summary>
    Capacity,

    /// <summary>m², cm², mm².</summary>
    Square,

    /// <summary>In the second unit of the row, the one that the trade writes: 0.0410 nA·m/mm².</summary>
    SecondUnit,
}
