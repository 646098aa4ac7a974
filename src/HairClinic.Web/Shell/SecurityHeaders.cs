namespace HairClinic.Web.Shell;

/// <summary>What a browser may load and do here: our own files only, no inline script, no inline style, no framing.</summary>
public static class SecurityHeaders
{
    public static HeaderPolicyCollection BuildHeaders() =>
        new HeaderPolicyCollection()
            .AddDefaultSecurityHeaders()
            .RemoveServerHeader()
            // A year, on https only; a browser takes no notice of it elsewhere.
            .AddStrictTransportSecurityMaxAgeIncludeSubDomains((int)TimeSpan.FromDays(365).TotalSeconds)
            .AddReferrerPolicySameOrigin()
            .AddCrossOriginOpenerPolicy(x => x.SameOrigin())
            .AddCrossOriginResourcePolicy(x => x.SameOrigin())
            .AddContentSecurityPolicy(csp =>
            {
                csp.AddDefaultSrc().None();
                csp.AddScriptSrc().Self().WithNonce();
                csp.AddStyleSrc().Self();
                csp.AddImgSrc().Self().Data();
                csp.AddConnectSrc().Self();
                csp.AddFontSrc().Self();
                csp.AddManifestSrc().Self();
                csp.AddFormAction().Self();
                csp.AddObjectSrc().None();
                // Every page has a base element of ours, which "none" would switch off; another site's is refused all the same.
                csp.AddBaseUri().Self();
                csp.AddFrameAncestors().None();
            })
            .AddPermissionsPolicy(policy =>
            {
                policy.AddDefaultSecureDirectives();
                // Codes are scanned with the tablet's camera; passkeys sign people in.
                policy.AddCamera().Self();
                policy.AddPublickeyCredentialsGet().Self();
                policy.AddCustomFeature("publickey-credentials-create").Self();
            });
}
