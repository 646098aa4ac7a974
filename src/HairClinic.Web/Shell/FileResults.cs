using System.Net.Mime;
using CsvHelper;

namespace HairClinic.Web.Shell;

/// <summary>How pictures, sheets and archives go out, whoever asks for them: kept by no browser on the way, taken for nothing else.</summary>
public static class FileResults
{
    /// <summary>A picture; none where there is none to see.</summary>
    public static IResult Picture(HttpContext context, byte[]? picture)
    {
        if (picture is null)
            return Results.NotFound();
        var headers = context.Response.Headers;
        headers.CacheControl = "no-store";
        headers.XContentTypeOptions = "nosniff";
        headers.ContentDisposition = "inline; filename=\"image.webp\"";
        return Results.Bytes(picture, "image/webp");
    }

    /// <summary>A table as a sheet with one row of headings; no cell of it is run as a formula. Numbers are written for programs, with a point.</summary>
    public static IResult Sheet(HttpContext context, string name, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var file = new MemoryStream();
        using (var csv = CsvWriter.Create(file, new CsvWriterOptions { Separator = ',', WriteByteOrderMark = true }, leaveOpen: true))
        {
            foreach (var row in rows.Prepend(headings))
            {
                foreach (var cell in row)
                    csv.WriteField(FormulaGuard.Neutralise(cell), CsvQuoting.WhenNeeded);
                csv.EndRecord();
            }
        }
        context.Response.Headers.CacheControl = "no-store";
        return Results.File(file.ToArray(), "text/csv; charset=utf-8", name);
    }

    /// <param name="write">
    /// Asks for the stream, with what the browser is to do with it, once it is sure that there is something to write. Returns whether there was.
    /// </param>
    public static async Task WriteArchiveAsync(HttpContext context, Func<Func<string, Stream>, Task<bool>> write)
    {
        try
        {
            if (!await write(Begin))
                context.Response.StatusCode = StatusCodes.Status404NotFound;
        }
        catch (Refusal) when (!context.Response.HasStarted)
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        }

        Stream Begin(string disposition)
        {
            context.Response.ContentType = MediaTypeNames.Application.Zip;
            context.Response.Headers.CacheControl = "no-store";
            context.Response.Headers.XContentTypeOptions = "nosniff";
            context.Response.Headers.ContentDisposition = disposition;
            // The archive writes its headers without awaiting, which the body itself refuses.
            return context.Response.BodyWriter.AsStream(leaveOpen: true);
        }
    }
}
