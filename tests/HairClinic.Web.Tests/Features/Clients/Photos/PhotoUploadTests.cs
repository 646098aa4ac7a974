using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Shell.Limits;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NetVips;

namespace HairClinic.Web.Tests.Features.Clients.Photos;

/// <summary>Photos as a browser sends them, to the program on a real port.</summary>
public sealed class PhotoUploadTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Photos_of_every_telephone_are_saved_upright_and_without_what_the_camera_wrote()
    {
        await using var site = await ClinicSite.OpenAsync(server, listening: true);
        var browser = await StylistAsync(site);
        // 288 kB is just beyond an ordinary form; 15 MB with 8064 × 6048 points is what a 48-megapixel sensor makes.
        (byte[] File, int Least, int Most)[] photos =
        [
            (DrawnPhoto.Noise(1000, 800, strength: 20, quality: 80), 270_000, 300_000),
            (DrawnPhoto.Noise(4000, 3000, strength: 30, quality: 85), 5_000_000, 6_000_000),
            (DrawnPhoto.FromLargeSensor(), 15_000_000, PhotoCompressor.MostBytes),
        ];
        foreach (var (file, least, most) in photos)
        {
            Assert.InRange(file.Length, least, most);

            using var answer = await SendAsync(browser, site, file);

            Assert.True(answer.StatusCode is HttpStatusCode.Redirect, await answer.Content.ReadAsStringAsync(Cancel));
        }
        var page = await browser.GetStringAsync(PageOf(site), Cancel);
        var newest = new HtmlParser().ParseDocument(page).QuerySelector(".shots a")!.GetAttribute("href")!;
        using var kept = Image.NewFromBuffer(await browser.GetByteArrayAsync(newest, Cancel));
        Assert.Equal((1800, PhotoCompressor.LongSide), (kept.Width, kept.Height));
        Assert.DoesNotContain(kept.GetFields(), f => f.StartsWith("exif", StringComparison.Ordinal) || f == "orientation");
        Assert.Equal(3 + 1, await CountAsync(site));
    }

    [Fact]
    public async Task One_that_is_too_large_is_refused_in_words_at_its_field_and_what_was_filled_in_stays()
    {
        await using var site = await ClinicSite.OpenAsync(server, listening: true);
        var browser = await StylistAsync(site);
        foreach (var size in new[] { PhotoCompressor.MostBytes + 1, 40 * 1024 * 1024 })
        {
            using var answer = await SendAsync(browser, site, new byte[size]);

            var page = new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(Cancel));
            Assert.Equal(
                "A photo has at most 15 megabytes. Send this one smaller.",
                page.QuerySelector("#f-picture-errors")?.TextContent.Trim()
            );
            Assert.Equal("Scalp", page.QuerySelector("[name='Add.Kind'] option[selected]")?.GetAttribute("value"));
            Assert.True(page.QuerySelector("[name='Add.Agreed']")!.HasAttribute("checked"));
        }
        Assert.Equal(1, await CountAsync(site));
    }

    [Fact]
    public async Task What_no_page_takes_is_refused_in_words_before_it_is_read()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var browser = await StylistAsync(site);

        using var answer = await SendAsync(browser, site, new byte[FileFormReader.MostSent]);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("a file has at most 15 megabytes", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_form_without_a_file_is_refused_in_words_too()
    {
        await using var site = await ListeningSite.OpenAsync(server);
        using var large = new ByteArrayContent(new byte[RequestLimits.UsualBytes + 1]);
        large.Headers.ContentType = new("application/x-www-form-urlencoded");

        using var answer = await site.Client().PostAsync("/sign-in", large, Cancel);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("Nothing was changed.", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_of_a_photo_is_written_to_the_disk_in_clear()
    {
        await using var site = await ClinicSite.OpenAsync(server, listening: true);
        var browser = await StylistAsync(site);
        using var watch = new OpenFiles();
        // One that unpacks to 177 MB in little, and one that is large as it comes.
        using (var flat = Image.Black(7700, 7700, bands: 3))
            Assert.Equal(HttpStatusCode.Redirect, (await SendAsync(browser, site, flat.PngsaveBuffer(compression: 6))).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await SendAsync(browser, site, DrawnPhoto.FromLargeSensor())).StatusCode);

        Assert.InRange(watch.Looks, 50, int.MaxValue);
        Assert.Empty(watch.Clear);
    }

    [Fact]
    public async Task A_file_without_our_mark_is_not_taken_in()
    {
        var reading = new Marks();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder => builder.ConfigureServices(services => services.AddSingleton(reading).AddSingleton<IStartupFilter, CountsSent>()),
            listening: true
        );
        var browser = await StylistAsync(site);
        using var form = new MultipartFormDataContent
        {
            { new StringContent("made up"), "__RequestVerificationToken" },
            { new StringContent("add-photo"), "_handler" },
            { Picture(new byte[10 * 1024 * 1024]), "Picture", "photo.jpg" },
        };

        using var answer = await browser.PostAsync(PageOf(site), form, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.InRange(reading.Read, 1, 1024 * 1024);
    }

    [Fact]
    public async Task Whoever_may_not_add_photos_is_turned_away_before_anything_is_read()
    {
        var reading = new Marks();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder => builder.ConfigureServices(services => services.AddSingleton(reading).AddSingleton<IStartupFilter, CountsSent>())
        );
        var desk = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));
        reading.Read = 0;
        using var form = new MultipartFormDataContent { { Picture(new byte[10 * 1024 * 1024]), "Picture", "photo.jpg" } };

        using var answer = await desk.PostAsync(PageOf(site), form, Cancel);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(0, reading.Read);
    }

    private static Task<HttpClient> StylistAsync(ClinicSite site) =>
        site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Stylist]));

    private static string PageOf(ClinicSite site) => $"/clients/{site.Here.Own.Client.Id}/photos";

    private static async Task<HttpResponseMessage> SendAsync(HttpClient browser, ClinicSite site, byte[] file)
    {
        var page = new HtmlParser().ParseDocument(await browser.GetStringAsync(PageOf(site), Cancel));
        var fields = page.QuerySelector("form[enctype]")!;
        using var form = new MultipartFormDataContent();
        foreach (var hidden in fields.QuerySelectorAll("input[type=hidden]"))
            form.Add(new StringContent(hidden.GetAttribute("value") ?? ""), hidden.GetAttribute("name")!);
        form.Add(Picture(file), "Picture", "photo.jpg");
        form.Add(new StringContent("Scalp"), "Add.Kind");
        form.Add(new StringContent("true"), "Add.Agreed");
        return await browser.PostAsync(PageOf(site), form, Cancel);
    }

    private static ByteArrayContent Picture(byte[] file)
    {
        var picture = new ByteArrayContent(file);
        picture.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
        return picture;
    }

    private static Task<int> CountAsync(ClinicSite site) =>
        site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                site.PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await db.Photos.CountAsync(p => p.ClientId == site.Here.Own.Client.Id, Cancel);
                }
            );

    /// <summary>
    /// Looks, as fast as it can, at what this process has open: files the server keeps of a request, and those the picture library unpacks
    /// into, which have no name any more (see proc(5), /proc/pid/fd).
    /// </summary>
    private sealed class OpenFiles : IDisposable
    {
        private readonly ConcurrentDictionary<string, byte> _seen = new();
        private readonly CancellationTokenSource _stopping = new();
        private readonly Task _looking;

        public OpenFiles() => _looking = Task.Factory.StartNew(Look, TaskCreationOptions.LongRunning);

        public int Looks { get; private set; }

        public IEnumerable<string> Clear => _seen.Keys.Order(StringComparer.Ordinal);

        public void Dispose()
        {
            _stopping.Cancel();
            _looking.Wait();
            _stopping.Dispose();
        }

        private void Look()
        {
            for (; !_stopping.IsCancellationRequested; Looks++, Thread.Sleep(1))
            {
                foreach (var file in Directory.EnumerateFileSystemEntries("/proc/self/fd"))
                {
                    if (Target(file) is { } target && IsClear(target))
                        _seen.TryAdd(target, 0);
                }
            }
        }

        private static bool IsClear(string target) =>
            target.Contains("ASPNETCORE_", StringComparison.Ordinal)
            || target.Contains("vips", StringComparison.Ordinal) && !target.Contains(".so", StringComparison.Ordinal)
            || target.StartsWith(Path.GetTempPath() + "#", StringComparison.Ordinal);

        private static string? Target(string file)
        {
            try
            {
                return new FileInfo(file).LinkTarget;
            }
            catch (IOException)
            {
                return null;
            }
        }
    }

    private sealed class Marks
    {
        public long Read { get; set; }
    }

    /// <summary>Counts what the program reads of a request's body.</summary>
    private sealed class CountsSent(Marks marks) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
            app =>
            {
                app.Use(
                    (context, rest) =>
                    {
                        context.Request.Body = new Counted(context.Request.Body, marks);
                        return rest();
                    }
                );
                next(app);
            };
    }

    private sealed class Counted(Stream inner, Marks marks) : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var read = await inner.ReadAsync(buffer, cancellationToken);
            marks.Read += read;
            return read;
        }

        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
