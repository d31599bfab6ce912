using GddWatch.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class SampleConfigurationTests
{
    [Fact]
    public void The_sample_configuration_reads_without_a_fault()
    {
        ConfigurationReading reading = ConfigurationReader.Read(Path.Combine(RepositoryFolder.Path, "config"));

        Assert.Empty(reading.Faults.Select(fault => fault.ToString()));
        Assert.NotNull(reading.Configuration);
    }
}
