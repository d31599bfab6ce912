namespace GddWatch.Configuration.Texts;

/// <summary>Marks texts that are taken exactly as they were written, empty ones and blanks included.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class MayBeEmptyAttribute : Attribute;
