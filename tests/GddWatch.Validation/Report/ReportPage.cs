using System.Net;
using System.Text;

namespace GddWatch.Validation.Report;

/// <summary>One self-contained page: text, tables and pictures, nothing loaded from elsewhere.</summary>
internal sealed class ReportPage(string title)
{
    private const string Style = """
        :root { color-scheme: light; }
        body { font: 16px/1.55 "DejaVu Sans", Verdana, sans-serif; color: #22292f; background: #fff; max-width: 68rem; margin: 2.5rem auto; padding: 0 1.5rem; }
        h1 { font-size: 1.7rem; line-height: 1.25; margin: 0 0 .4rem; }
        h2 { font-size: 1.25rem; margin: 2.8rem 0 .6rem; padding-top: .9rem; border-top: 2px solid #d9e2dc; }
        p { margin: .6rem 0; max-width: 52rem; }
        .scroll { overflow-x: auto; margin: 1rem 0; }
        table { border-collapse: collapse; font-size: .82rem; line-height: 1.35; font-variant-numeric: tabular-nums; }
        caption { text-align: left; font-weight: bold; padding-bottom: .4rem; }
        th, td { padding: .28rem .65rem; text-align: right; white-space: nowrap; border-bottom: 1px solid #e3e8e5; }
        th { background: #eef3f0; vertical-align: bottom; }
        th:first-child, td:first-child { text-align: left; white-space: normal; min-width: 12rem; }
        tr.chosen td { background: #e6f3ec; font-weight: bold; }
        figure { margin: 1.2rem 0 1.8rem; }
        figure img { width: 100%; height: auto; border: 1px solid #e3e8e5; }
        figcaption { font-size: .85rem; color: #4a555c; margin-top: .3rem; }
        .note { border-left: 4px solid #b9cfc3; padding: .1rem 0 .1rem .9rem; color: #3c474e; }
        nav ul { columns: 2; padding-left: 1.2rem; margin: .6rem 0; }
        """;

    private readonly StringBuilder body = new();
    private readonly List<string> headings = [];

    public void Heading(string text)
    {
        headings.Add(text);
        body.AppendLine($"<h2 id=\"part-{headings.Count}\">{Safe(text)}</h2>");
    }

    public void Text(string text) => body.AppendLine($"<p>{Safe(text)}</p>");

    public void Note(string text) => body.AppendLine($"<p class=\"note\">{Safe(text)}</p>");

    /// <summary>A table whose first column names the row; a row that begins with "*" is set apart.</summary>
    public void Table(string caption, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        body.AppendLine($"<div class=\"scroll\"><table><caption>{Safe(caption)}</caption>");
        body.AppendLine($"<thead><tr>{string.Concat(columns.Select(column => $"<th>{Safe(column).Replace("\n", "<br>")}</th>"))}</tr></thead><tbody>");
        foreach (IReadOnlyList<string> row in rows)
        {
            bool chosen = row[0].StartsWith('*');
            IEnumerable<string> cells = row.Select((cell, i) => $"<td>{Safe(i == 0 ? cell.TrimStart('*') : cell)}</td>");
            body.AppendLine($"<tr{(chosen ? " class=\"chosen\"" : "")}>{string.Concat(cells)}</tr>");
        }

        body.AppendLine("</tbody></table></div>");
    }

    public void Picture(byte[] png, string caption)
    {
        string image = $"<img alt=\"{Safe(caption)}\" src=\"data:image/png;base64,{Convert.ToBase64String(png)}\">";
        body.AppendLine($"<figure>{image}<figcaption>{Safe(caption)}</figcaption></figure>");
    }

    public string Html()
    {
        string contents = string.Concat(headings.Select((heading, i) => $"<li><a href=\"#part-{i + 1}\">{Safe(heading)}</a></li>"));
        return $"""
            <!doctype html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{Safe(title)}</title>
            <style>
            {Style}
            </style></head>
            <body>
            <h1>{Safe(title)}</h1>
            <nav aria-label="Parts of the report"><ul>{contents}</ul></nav>
            {body}
            </body></html>

            """;
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
