using System.CommandLine;

namespace GddWatch.Commands.Backtesting;

/// <summary>What <c>fit</c> takes.</summary>
internal sealed class FitOptions
{
    public Argument<string> Name { get; } = new("TREATMENT") { Description = "A treatment's id, or the name of something that was seen and that no treatment has, such as a bud break." };

    public Option<string?> Observed { get; } = new("--observed") { Description = "A CSV file of what was seen, with the columns site, event and date. What the journal has seen counts too.", HelpName = "FILE" };

    public Option<string[]> Model { get; } = MakeModel();

    public Option<string?> Heat { get; } = new("--heat") { Description = $"The heat sum to fit; its base is searched: {HeatColumn.Accepted}.", HelpName = "TEXT" };

    public Option<string> Depth { get; } = new("--depth") { Description = "The depth of the soil, where a soil temperature is fitted to something that no treatment has.", HelpName = "DEPTH", DefaultValueFactory = _ => "5 cm" };

    public Option<string?> Season { get; } = new("--season") { Description = "The part of the year in which the date is looked for, written for the north; a treatment's own, else the whole year.", HelpName = "\"MM-DD to MM-DD\"" };

    public Option<bool> Falls { get; } = new("--falls") { Description = "The temperature that is waited for falls, as in autumn, rather than rises." };

    public IEnumerable<Option> All => [Observed, Model, Heat, Depth, Season, Falls];

    private static Option<string[]> MakeModel()
    {
        Option<string[]> model = new("--model")
        {
            Description = "What is fitted: a treatment's own opening by default; heat-sum, air and soil for anything else.",
            HelpName = string.Join('|', FitModels.Names),
            AllowMultipleArgumentsPerToken = true,
        };
        model.AcceptOnlyFromAmong([.. FitModels.Names]);
        return model;
    }
}
