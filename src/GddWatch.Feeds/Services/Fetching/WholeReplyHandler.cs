namespace GddWatch.Feeds.Services.Fetching;

/// <summary>Reads a reply's body to its end, up to a limit after unpacking, so that a slow or broken body counts as a failed attempt.</summary>
internal sealed class WholeReplyHandler(int mostBytes) : DelegatingHandler
{
    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        HttpResponseMessage response = await base.SendAsync(request, cancellationToken);
        try
        {
            byte[] body = await ReadAsync(response, cancellationToken);
            var whole = new ByteArrayContent(body);
            foreach (KeyValuePair<string, IEnumerable<string>> header in response.Content.Headers.NonValidated.Select(each => KeyValuePair.Create(each.Key, each.Value.AsEnumerable())))
            {
                if (!header.Key.Equals("Content-Length", StringComparison.OrdinalIgnoreCase)) whole.Headers.TryAddWithoutValidation(header.Key, header.Value);
            }

            response.Content.Dispose();
            response.Content = whole;
            return response;
        }
        catch
        {
            response.Dispose();
            throw;
        }
    }

    private async Task<byte[]> ReadAsync(HttpResponseMessage response, CancellationToken stop)
    {
        if (response.Content.Headers.ContentLength > mostBytes) throw new ReplyTooLargeException(mostBytes);
        await using Stream body = await response.Content.ReadAsStreamAsync(stop);
        using var whole = new MemoryStream();
        var part = new byte[64 * 1024];
        int read;
        while ((read = await body.ReadAsync(part, stop)) > 0)
        {
            if (whole.Length + read > mostBytes) throw new ReplyTooLargeException(mostBytes);
            whole.Write(part, 0, read);
        }

        return whole.ToArray();
    }
}
