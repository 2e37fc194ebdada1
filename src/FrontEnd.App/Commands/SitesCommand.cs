using System.CommandLine;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Head;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend sites</c>: where the sites of the 10-20 system lie on one head.</summary>
internal static class SitesCommand
{
    public static Command Make(Outlet outlet)
    {
        Option<string> sagittal = new("--nasion-inion") { Description = "nasion to inion over the vertex, along the skin",
            HelpName = "length", DefaultValueFactory = _ => "36 cm" };
        Option<string> coronal = new("--preauricular") { Description = "preauricular point to preauricular point over the vertex", HelpName = "length", DefaultValueFactory = _ => "37 cm" };
        Option<string> ring = new("--circumference") { Description = "around the head through Fpz, T7, Oz and T8",
            HelpName = "length", DefaultValueFactory = _ => "56 cm" };
        Option<string> lobe = new("--ear-lobe-down") { Description = "ear lobes A1, A2 below the preauricular points", HelpName = "length", DefaultValueFactory = _ => "2.5 cm" };
        Option<string> mastoid = new("--mastoid-down") { Description = "mastoids M1, M2 below the preauricular points", HelpName = "length", DefaultValueFactory = _ => "1.5 cm" };
        Option<string> behind = new("--mastoid-back") { Description = "mastoids M1, M2 behind the preauricular points", HelpName = "length", DefaultValueFactory = _ => "3.5 cm" };
        Option<string?> from = new("--from") { Description = "site to measure a distance from", HelpName = "site" };
        Option<string?> to = new("--to") { Description = "site to measure a distance to", HelpName = "site" };
        Option<string?> montage = new("--montage") { Description = $"the pairs to compare: {string.Join(", ", Sites.Montages.Keys)}, or chains written out as \"Fp1 F3 C3; Fz Cz\"", HelpName = "montage" };
        Option<bool> column = new("--halfway-fp-c") { Description = "place F3, F4, P3, P4 halfway between Fp and C or O and C; default: halfway between Fz and F7 and so on" };
        Option<bool> rows = new("--ten-ten") { Description = "add the 10-10 rows; default: the sites of the 10-20 system" };
        Option<string?> svg = new("--svg") { Description = "file for the head map; an existing file is replaced", HelpName = "file" };
        Option<bool> json = OptionValues.Json();
        Command command = new("sites",
            "Shows where the sites of the 10-20 system are measured on a head, how far apart two of them are, and what a montage compares.") { sagittal,
            coronal, ring, lobe, mastoid, behind, from, to, montage, rows, column, svg, json };
        command.SetAction(call => Run(
            new SitesRequest
            {
                NasionInion = call.GetRequiredValue(sagittal), Preauricular = call.GetRequiredValue(coronal),
                Circumference = call.GetRequiredValue(ring),
                EarLobeDown = call.GetRequiredValue(lobe), MastoidDown = call.GetRequiredValue(mastoid), MastoidBack = call.GetRequiredValue(behind),
                From = call.GetValue(from) ?? "", To = call.GetValue(to) ?? "", Montage = call.GetValue(montage)
                    ?? "", Rule = call.GetValue(column)
                        ? SiteRule.Column
                        : SiteRule.Row, Set = call.GetValue(rows)
                        ? SiteSet.TenTen
                        : SiteSet.TenTwenty,
            },
            call.GetValue(svg), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(SitesRequest request, string? svg, bool json, Outlet outlet)
    {
        (SitesAnswer? answer, IReadOnlyList<Finding> findings) = request.Work();
        if (answer is null)
        {
            outlet.Tell(findings);
            return ExitCode.Unusable;
        }

        if (svg is not null && TextFiles.WriteAtomically(svg, HeadMap.Svg(answer.Sites)) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        string[] files = svg is null ? [] : [svg];
        outlet.Results.Write(json ? AnswerJson.Of(answer.Sites, files) : answer.Text);
        outlet.NameBeside(json, files);
        return ExitCode.Met;
    }
}
