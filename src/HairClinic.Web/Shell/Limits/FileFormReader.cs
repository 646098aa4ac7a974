using System.Buffers;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// Reads a form that brings a file, into memory of a fixed size and never onto the disk, where the framework would keep it in clear.
/// It stands behind sign-in and the count of uploads, and looks at our mark before it takes the file.
/// </summary>
/// <remarks>
/// Four are read at once (<see cref="RateLimits"/>). A file that is too large is read to its end and dropped, so that the page can say so
/// at its field: a browser that is still sending hears no answer.
/// </remarks>
public static class FileFormReader
{
    /// <summary>Where not even that: the largest request that is read at all. No phone's photo comes near it.</summary>
    public const long MostSent = 64 * 1024 * 1024;

    private const int MostFields = 32;

    // 15 MB arrive within half an hour or not at all: a slot is not held by a drip.
    private static readonly MinDataRate LeastRate = new(bytesPerSecond: 8 * 1024, gracePeriod: TimeSpan.FromSeconds(10));

    public static async Task ReadAsync(HttpContext context, RequestDelegate next)
    {
        if (MaxFileBytesOf(context) is not { } most)
        {
            await next(context);
            return;
        }
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = MostSent;
        if (context.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate)
            rate.MinDataRate = LeastRate;
        if (context.Request.ContentLength > MostSent)
        {
            await RequestLimits.SayTooLargeAsync(context);
            return;
        }
        var form = FormCollection.Empty;
        try
        {
            form = await ReadAsync(context, most);
        }
        catch (Microsoft.AspNetCore.Http.BadHttpRequestException e) when (e.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            await RequestLimits.SayTooLargeAsync(context);
            return;
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            // No form anybody can read holds no mark: it is refused as one that is not ours.
        }
        context.Features.Set<IFormFeature>(new FormFeature(form));
        await next(context);
    }

    /// <summary>The largest file this request may bring; null where it is an ordinary one.</summary>
    public static int? MaxFileBytesOf(HttpContext context) =>
        HttpMethods.IsPost(context.Request.Method)
        && context.Request.ContentType?.StartsWith("multipart/form-data", StringComparison.OrdinalIgnoreCase) == true
            ? context.GetEndpoint()?.Metadata.GetMetadata<TakesFileAttribute>()?.MostBytes
            : null;

    private static async Task<FormCollection> ReadAsync(HttpContext context, int most)
    {
        var cancellation = context.RequestAborted;
        var boundary = HeaderUtilities.RemoveQuotes(MediaTypeHeaderValue.Parse(context.Request.ContentType).Boundary).Value;
        if (string.IsNullOrEmpty(boundary) || boundary.Length > 128)
            throw new InvalidDataException();
        var reader = new MultipartReader(boundary, context.Request.Body) { HeadersCountLimit = 8, HeadersLengthLimit = 4 * 1024 };
        var fields = new Dictionary<string, StringValues>(StringComparer.OrdinalIgnoreCase);
        var files = new FormFileCollection();
        var letters = 0L;
        using var text = new Room(RequestLimits.UsualBytes);
        while (await reader.ReadNextSectionAsync(cancellation) is { } section)
        {
            if (
                !ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var said)
                || fields.Count + files.Count > MostFields
            )
                throw new InvalidDataException();
            var name = HeaderUtilities.RemoveQuotes(said.Name).Value ?? "";
            if (said.IsFileDisposition())
            {
                // What is not from our page is not taken in; whoever looks at the mark next refuses it.
                context.Features.Set<IFormFeature>(new FormFeature(new FormCollection(fields)));
                if (files.Count > 0 || !await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context))
                    return FormCollection.Empty;
                var room = new Room(most);
                context.Response.RegisterForDispose(room);
                var length = await room.ReadAsync(section.Body, cancellation);
                files.Add(
                    new FormFile(room.Content, 0, length, name, HeaderUtilities.RemoveQuotes(said.FileName).Value ?? "")
                    {
                        Headers = new HeaderDictionary(section.Headers ?? []),
                    }
                );
                continue;
            }
            var value = await text.ReadAsync(section.Body, cancellation);
            if ((letters += value) > RequestLimits.UsualBytes)
                throw new InvalidDataException();
            fields[name] = StringValues.Concat(fields.GetValueOrDefault(name), Encoding.UTF8.GetString(text.Taken));
        }
        return new FormCollection(fields, files);
    }

    /// <summary>Memory for one part of a form, used again and again: what is thrown away each time would pile up until it is collected.</summary>
    private sealed class Room(int most) : IDisposable
    {
        private static readonly ArrayPool<byte> Pool = ArrayPool<byte>.Create(maxArrayLength: 16 * 1024 * 1024, maxArraysPerBucket: 4);

        private readonly byte[] _bytes = Pool.Rent(most);
        private int _used;

        public ReadOnlySpan<byte> Taken => _bytes.AsSpan(0, _used);

        public Stream Content => new MemoryStream(_bytes, 0, _used, writable: false);

        /// <returns>How long it was. What is longer than there is room is read on, and nothing of it kept.</returns>
        public async Task<long> ReadAsync(Stream from, CancellationToken cancellation)
        {
            _used = 0;
            while (_used < most)
            {
                var read = await from.ReadAsync(_bytes.AsMemory(_used, most - _used), cancellation);
                if (read == 0)
                    return _used;
                _used += read;
            }
            var length = (long)_used;
            var beyond = new byte[16 * 1024];
            while (await from.ReadAsync(beyond, cancellation) is > 0 and var more)
                length += more;
            _used = length > most ? 0 : _used;
            return length;
        }

        // Cleared: a picture of somebody lay in it.
        public void Dispose() => Pool.Return(_bytes, clearArray: true);
    }
}
