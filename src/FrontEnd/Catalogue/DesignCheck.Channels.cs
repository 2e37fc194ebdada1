using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Head;

namespace FrontEnd.Catalogue;

/// <content>Checks of named channels, of the sites of all electrodes and of derived channels.</content>
public static partial class DesignCheck
{
    private sealed partial class Checker
    {
        public void NamedChannels()
        {
            IReadOnlyList<Channel> channels = design.ChannelList;
            if (0 < channels.Count)
            {
                Names(DesignList.ChannelsKey, [.. channels.Select(channel => channel.Name)]);
                if (0 < design.Montage.Sites.Count)
                {
                    Error(Messages.SitesBesideChannels, DesignKeys.Montage.Sites, "montage.sites and [[channels]] are both given",
                        "each channel states its own site", "remove montage.sites, or the channels", DesignList.ChannelsKey);
                }

                for (int i = 0; i < channels.Count; i++)
                {
                    OwnElectrodes(channels[i], $"channels[{i + 1}]");
                }
            }

            Sites(Placed());
            DerivedChannels();
        }

        private readonly record struct PlacedElectrode(string Key, string Word, string What, bool IsChannel, string Name = "")
        {
            /// <summary>Old and new names of one site are one.</summary>
            public bool IsAt(PlacedElectrode other) => string.Equals(Site, other.Site, StringComparison.OrdinalIgnoreCase);

            private string Site { get; } = SiteOf(Word);

            private static string SiteOf(string word) => SiteWords.Site(word)?.Name ?? word.Trim();
        }

        private List<PlacedElectrode> Placed()
        {
            List<PlacedElectrode> placed = [];
            for (int i = 0; i < design.ChannelList.Count; i++)
            {
                Channel channel = design.ChannelList[i];
                placed.Add(new(channel.Site.Length == 0 ? $"channels[{i + 1}].name" : $"channels[{i + 1}].site", channel.EffectiveSite, $"channel `{channel.Name}`", true, channel.Name));
            }

            placed.AddRange(design.Electrodes.ReferenceSites.Select(site => new PlacedElectrode(DesignKeys.Electrodes.ReferenceSites, site, "the reference", false)));
            if (design.Electrodes.GroundSite.Length > 0)
            {
                placed.Add(new(DesignKeys.Electrodes.GroundSite, design.Electrodes.GroundSite, "the ground electrode", false));
            }

            return placed;
        }

        private void Sites(List<PlacedElectrode> placed)
        {
            for (int i = 0; i < placed.Count; i++)
            {
                PlacedElectrode one = placed[i];
                NearMiss(one.Key, one.Word);
                int before = placed.FindIndex(other => other.IsAt(one));
                if (before == i || one.Word.Length == 0 || (one.IsChannel && placed[before].IsChannel && Slug.Of(one.Name) == Slug.Of(placed[before].Name)))
                {
                    continue;
                }

                // Of two channels of one name that is said, once.
                PlacedElectrode other = placed[before];
                string called = string.Equals(one.Word, other.Word, StringComparison.OrdinalIgnoreCase) ? "" : $", one place under two names (`{other.Word}`)";
                Error(one.IsChannel || one.What == other.What ? Messages.SiteTwice : Messages.ReferenceIsChannel, one.Key,
                    $"{one.What} is at `{one.Word}`, where {other.What} {(one.What == other.What ? "already is" : "is")}{called}",
                    "a site has room for one electrode only; a channel measured against itself shows nothing", "give one of them another site", other.Key);
            }

            for (int i = 0; i < design.ChannelList.Count; i++)
            {
                Channel channel = design.ChannelList[i];
                if (channel.Minus is not { } minus)
                {
                    continue;
                }

                string key = $"channels[{i + 1}].minus.site";
                NearMiss(key, minus.Site);
                if (new PlacedElectrode(key, minus.Site, "", false).IsAt(placed[i]))
                {
                    Error(Messages.MinusIsOwnSite, key, $"channel `{channel.Name}` is measured against its own site, `{minus.Site}`", null,
                        "name the site of its other electrode", placed[i].Key);
                }
            }
        }

        private void NearMiss(string key, string word)
        {
            if (SiteWords.OneLetterFrom(word) is { } near && !SiteWords.All.Contains(word, StringComparer.OrdinalIgnoreCase))
            {
                Warning(Messages.SiteNearMiss, key, $"`{word}` is not a site of the 10-20 system or the 10-10 rows, but is {(Lookalikes.First(word) is null ? "one letter away from" : "nearly")} `{near}`",
                    Lookalikes.Reason(word) ?? "any words may name a site, but what an unknown site sees cannot be computed", $"write `{near}` if that is intended");
            }
        }

        private void OwnElectrodes(Channel channel, string key)
        {
            HalfBlock($"channel `{channel.Name}`'s", $"{key}.electrode", channel.Electrode);
            HalfBlock($"channel `{channel.Name}`'s minus", $"{key}.minus.electrode", channel.Minus?.Electrode);
        }

        private void DerivedChannels()
        {
            string[] known = [.. design.ChannelNames];
            HashSet<string> slugs = [.. known.Select(Slug.Of)];
            Names("derived", [.. design.Derived.Select(one => one.Name)]);
            for (int i = 0; i < design.Derived.Count; i++)
            {
                DerivedChannel derived = design.Derived[i];
                string key = $"derived[{i + 1}].weights";
                foreach (NamedNumber weight in derived.Weights.All.Where(weight => !slugs.Contains(Slug.Of(weight.Name))))
                {
                    string? near = Nearest.Of(weight.Name, known);
                    Error(Messages.DerivedOfUnknown, key, $"derived channel `{derived.Name}` has a weight for `{weight.Name}`, which is not a recorded channel",
                        near is null ? $"the channels are {Messages.Listed(known)}" : $"the nearest is `{near}`", "name a recorded channel, or remove the weight",
                        DesignList.ChannelsKey, "derived");
                }

                if (derived.Weights.All.All(weight => weight.Value == 0))
                {
                    Error(Messages.DerivedOfNothing, key, $"all weights of derived channel `{derived.Name}` are 0", null,
                        "give weights of recorded channels, such as { O1 = 1, O2 = -1 }", "derived");
                }
            }

            if (design.Derived.Count == 0 && design.ChannelList.Count == 0)
            {
                return;
            }

            string[] rows = [.. design.DerivedRows.Select(row => Slug.Of(row.Name))];
            for (int i = rows.Length - design.Derived.Count; i < rows.Length; i++)
            {
                if (Array.IndexOf(rows, rows[i]) < rows.Length - design.Derived.Count)
                {
                    Error(Messages.DerivedNamesTwice, $"derived[{i - rows.Length + design.Derived.Count + 1}].name",
                        $"a channel of the montage and a derived channel are both named {rows[i]} in ids", "results are named after it, so it must be unique",
                        "rename the derived channel", "derived", "montage.kind");
                }
            }
        }
    }
}
