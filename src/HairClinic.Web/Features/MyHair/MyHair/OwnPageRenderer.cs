using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Components.HtmlRendering.Infrastructure;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.Http.Extensions;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Answers for a client's first page, which is only read, with nothing but its components and its words.</summary>
/// <remarks>
/// The framework's own renderer prepares for forms, scripts and circuits, and seals a state into each page that nobody asks for.
/// Thousands of clients look at the same hour, and half of the work of their page was that. To lead elsewhere the page says so to the
/// response, as there is nobody to navigate.
/// </remarks>
public sealed class OwnPageRenderer(RequestDelegate next, ILoggerFactory log)
{
    public Task InvokeAsync(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method)
        && context.GetEndpoint() is { } endpoint
        && endpoint.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type == typeof(MyHairPage)
            ? AnswerAsync(context, endpoint)
            : next(context);

    private async Task AnswerAsync(HttpContext context, Endpoint endpoint)
    {
        TellAddress(context);
        var text = new StringWriter(new StringBuilder(8192));
        await using (var renderer = new Renderer(context.RequestServices, log, endpoint))
            await renderer.Dispatcher.InvokeAsync(async () =>
            {
                var root = renderer.BeginRenderingComponent(
                    typeof(CascadingValue<HttpContext>),
                    ParameterView.FromDictionary(
                        new Dictionary<string, object?>
                        {
                            [nameof(CascadingValue<>.Value)] = context,
                            [nameof(CascadingValue<>.IsFixed)] = true,
                            [nameof(CascadingValue<>.ChildContent)] = Document,
                        }
                    )
                );
                await root.QuiescenceTask;
                if (context.Response.StatusCode == StatusCodes.Status200OK)
                    root.WriteHtmlTo(text);
            });
        if (context.Response.StatusCode != StatusCodes.Status200OK)
            return;
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(text.ToString(), context.RequestAborted);
    }

    private static void TellAddress(HttpContext context)
    {
        var request = context.Request;
        ((IHostEnvironmentNavigationManager)context.RequestServices.GetRequiredService<NavigationManager>()).Initialize(
            UriHelper.BuildAbsolute(request.Scheme, request.Host, request.PathBase, "/"),
            request.GetEncodedUrl()
        );
    }

    private static readonly RenderFragment Document = builder =>
    {
        builder.OpenComponent<ClientPageDocument>(0);
        builder.CloseComponent();
    };

    private sealed class Renderer(IServiceProvider services, ILoggerFactory log, Endpoint endpoint) : StaticHtmlRenderer(services, log)
    {
        protected override ResourceAssetCollection Assets { get; } =
            endpoint.Metadata.GetMetadata<ResourceAssetCollection>() ?? ResourceAssetCollection.Empty;
    }
}
