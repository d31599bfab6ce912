using System.Reflection;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.HouseRules;

public sealed class CorePurityTests
{
    private static readonly Assembly Core = typeof(WindowJudge).Assembly;

    [Fact]
    public void The_core_knows_nobody_but_the_runtime_and_the_numbers_library()
    {
        string[] foreign = [.. Core.GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => name != "MathNet.Numerics" && !name.StartsWith("System.", StringComparison.Ordinal))];
        Assert.Empty(foreign);
    }

    [Fact]
    public void The_core_does_not_even_reference_files_sockets_or_a_console()
    {
        string[] referenced = [.. Core.GetReferencedAssemblies().Select(reference => reference.Name!)];
        Assert.DoesNotContain("System.Console", referenced);
        Assert.DoesNotContain("System.Net.Http", referenced);
        Assert.DoesNotContain(referenced, name => name.StartsWith("System.IO", StringComparison.Ordinal));
        Assert.DoesNotContain(referenced, name => name.StartsWith("System.Threading", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_public_class_of_the_core_is_sealed_or_abstract()
    {
        string[] open = [.. Core.GetExportedTypes().Where(type => type is { IsClass: true, IsSealed: false, IsAbstract: false }).Select(type => type.FullName!)];
        Assert.Empty(open);
    }

    [Fact]
    public void No_static_field_of_the_core_can_be_changed()
    {
        string[] changeable = [.. Core.GetTypes()
            .Where(type => !type.Name.StartsWith('<') && type.DeclaringType?.Name.StartsWith('<') != true)
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(field => !field.IsInitOnly && !field.IsLiteral && !field.Name.StartsWith('<'))
            .Select(field => $"{field.DeclaringType!.FullName}.{field.Name}")];
        Assert.Empty(changeable);
    }

    [Fact]
    public void No_property_of_the_core_can_be_set_after_construction()
    {
        string[] settable = [.. Core.GetExportedTypes()
            .SelectMany(type => type.GetProperties(BindingFlags.Instance | BindingFlags.Public))
            .Where(property => property.SetMethod is { IsPublic: true } setter
                && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)))
            .Select(property => $"{property.DeclaringType!.FullName}.{property.Name}")];
        Assert.Empty(settable);
    }
}
