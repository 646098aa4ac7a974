namespace HairClinic.Web.Shell;

/// <summary>A page or endpoint that opens only to someone who proved who they are a moment ago: exports, health answers, deletion.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class StepUpAttribute : Attribute;
