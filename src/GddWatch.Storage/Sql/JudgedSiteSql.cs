namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>judged_site</c>.</summary>
internal static class JudgedSiteSql
{
    public const string Load = "select site as Site, judged_on as JudgedOn from judged_site order by site";

    public const string Keep = """
        insert into judged_site (site, judged_on) values (@site, @judgedOn)
        on conflict (site) do update set judged_on = excluded.judged_on
        """;
}
