using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class DatabasePlaceTests
{
    [Fact]
    public void A_place_on_a_server_is_told_by_database_and_server_and_its_password_never()
    {
        DatabasePlace place = DatabasePlace.OnServer.Read("Host=db.example.org;Port=6432;Database=lawns;Username=watch", "hush-hush", out string problem)!;

        Assert.Equal("", problem);
        Assert.Equal("lawns on db.example.org:6432", $"{place}");
    }

    [Theory]
    [InlineData("Host=db.example.org;Database=lawns", "Host, Database and Username are needed")]
    [InlineData("Server=db;Colour=blue;Password=hush-hush", "not a connection string of PostgreSQL")]
    [InlineData("Host=db;Port=hush-hush;Database=lawns;Username=watch", "not a connection string of PostgreSQL")]
    [InlineData("Host=db;Database=lawns;Username=watch;Password=hush-hush", "another one besides")]
    [InlineData("Host=db;Database=lawns;Username=watch;SSL Mode=Prefer", "in the clear")]
    [InlineData("Host=localhost,db;Database=lawns;Username=watch;SSL Mode=Disable", "in the clear")]
    [InlineData("Host=localhost.example.org;Database=lawns;Username=watch;SSL Mode=Disable", "in the clear")]
    [InlineData("Host=127.0.0.1.example.org;Database=lawns;Username=watch;SSL Mode=Disable", "in the clear")]
    public void What_cannot_be_used_is_told_without_showing_it(string connection, string why)
    {
        Assert.Null(DatabasePlace.OnServer.Read(connection, "secret", out string problem));

        Assert.Contains(why, problem, StringComparison.Ordinal);
        Assert.DoesNotContain("hush-hush", problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Host=127.0.0.1;Database=lawns;Username=watch")]
    [InlineData("Host=localhost;Database=lawns;Username=watch;SSL Mode=Disable")]
    [InlineData("Host=::1;Database=lawns;Username=watch;SSL Mode=Disable")]
    [InlineData("Host=/run/postgresql;Database=lawns;Username=watch;SSL Mode=Disable")]
    [InlineData("Host=db.example.org;Database=lawns;Username=watch;SSL Mode=Require")]
    public void This_machine_may_be_asked_in_the_clear_and_others_with_encryption(string connection) =>
        Assert.NotNull(DatabasePlace.OnServer.Read(connection, null, out _));

    [Fact]
    public void A_server_elsewhere_must_prove_who_it_is_unless_something_else_is_asked_for()
    {
        DatabasePlace.OnServer place = DatabasePlace.OnServer.Read("Host=db.example.org;Database=lawns;Username=watch", null, out _)!;

        Assert.Contains("SSL Mode=VerifyFull", place.Connection, StringComparison.Ordinal);
    }
}
