namespace GddWatch.Configuration.Scalars;

/// <summary>The form that a single value has in JSON.</summary>
public enum ScalarForm
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>A number without a unit.</summary>
    Number,

    /// <summary>true or false.</summary>
    Truth,
}
