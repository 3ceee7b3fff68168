namespace RackCheck.Testing;

/// <summary>Files of the repository. Found from the test's own folder: a build in CI does not tell where the sources lie.</summary>
public static class Repository
{
    /// <summary>Whether the files that are made of the code are to be written anew, by <c>tests/regenerate</c>.</summary>
    public static bool IsRegenerating => Environment.GetEnvironmentVariable("RACKCHECK_REGENERATE") == "1";

    public static string Root { get; } = Find();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    public static string Read(params string[] parts) => File.ReadAllText(PathOf(parts));

    public static IEnumerable<string> Sources(params string[] parts) => Directory
        .EnumerateFiles(PathOf(parts), "*.cs", SearchOption.AllDirectories)
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal));

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RackCheckApi.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests do not lie in the repository.");
    }
}
