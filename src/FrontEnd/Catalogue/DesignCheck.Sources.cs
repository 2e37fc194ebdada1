using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Catalogue;

/// <content>Checks of the head, of the sources on it and of what has to be seen.</content>
public static partial class DesignCheck
{
    private sealed partial class Checker
    {
        public void Sources()
        {
            IReadOnlyList<SeeRequirement> see = design.Requirements.See;
            if (design.Head is null && design.Patches.Count == 0 && see.Count == 0)
            {
                return;
            }

            HeadMeasures measures = design.Head ?? new();
            if (HeadSphere.Of(measures.Size) is null)
            {
                Put(SourceCheck.NotOneHead(measures), "head.nasion-inion", "head.preauricular");
                return;
            }

            Names("patches", [.. design.Patches.Select(patch => patch.Name)]);
            if (design.Patches.Count == 0 && see.Count == 0)
            {
                return;
            }

            List<Finding> findings = [];
            IReadOnlyList<SiteChannel> channels = SiteChannels.Of(design, findings);
            Site[] recorded = [.. channels.Where(one => one.IsRecorded).Select(one => one.Derivation.Active)];
            HeadModel head = measures.Model!;
            for (int i = 0; i < design.Patches.Count; i++)
            {
                int number = i + 1;
                SourceCheck.Read(design.Patches[i], head, design.Bands, design.Band, recorded, key => $"patches[{number}].{key}", findings);
            }

            if (channels.Count == 0)
            {
                findings.Add(Messages.NoSites(design.Name) with { Severity = see.Count > 0 ? Severity.Error : Severity.Warning });
            }
            else
            {
                Seen(channels, findings);
            }

            foreach (Finding finding in findings)
            {
                Put(finding, finding.Field.Length > 0 && finding.Field.IndexOf(']') is var end and > 0 ? finding.Field[..(end + 1)] : "montage.sites");
            }
        }

        private void Seen(IReadOnlyList<SiteChannel> channels, List<Finding> findings)
        {
            string[] names = [.. channels.Select(one => one.Derivation.Name)];
            for (int i = 0; i < design.Requirements.See.Count; i++)
            {
                SeeRequirement one = design.Requirements.See[i];
                string key = $"{DesignList.SeeKey}[{i + 1}]";
                if (design.Patches.FirstOrDefault(patch => SourceCheck.SameWord(patch.Name, one.Patch)) is not { } patch)
                {
                    findings.Add(Messages.NotToBeSeen(key + ".patch", "source", one.Patch, Nearest.Of(one.Patch, design.Patches.Select(known => known.Name))));
                }
                else if (one.Ratio is not null && patch.Amplitude is null)
                {
                    findings.Add(Messages.NotStated(key + ".ratio", patch.Name));
                }

                if (!names.Any(name => SourceCheck.SameWord(name, one.Channel)))
                {
                    findings.Add(Messages.NotToBeSeen(key + ".channel", "channel", one.Channel, Nearest.Of(one.Channel, names)));
                }
            }
        }

        private void Put(Finding finding, params ReadOnlySpan<string> restsOn) =>
            Add(finding.Code, finding.Severity, finding.Field, finding.Message, finding.Note, finding.Help ?? "", restsOn);
    }
}
