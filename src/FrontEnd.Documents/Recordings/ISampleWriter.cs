namespace FrontEnd.Documents.Recordings;

/// <summary>Writes samples as they come, whatever the form of the file; holds no more of them than a record.</summary>
internal interface ISampleWriter
{
    /// <summary>The next samples, by channel, in steps of the converter. The arrays may be used again afterwards.</summary>
    void Write(IReadOnlyList<double[]> steps, int length);

    /// <summary>Something that was found while the next samples were simulated; told before they are written.</summary>
    void Note(RecordingNote note);

    /// <summary>After the last sample: what is still to be written.</summary>
    void Finish();

    /// <summary>How the samples stand in the file.</summary>
    IReadOnlyList<WrittenChannel> Channels { get; }
}
