/// <summary>Runs inside a program under test that is started with this assembly as a hook of the runtime: crashes a thread of it once a file is there.</summary>
/// <remarks>The runtime asks for this name, outside every namespace.</remarks>
#pragma warning disable CA1050, CA1852, MA0047
internal class StartupHook
{
    /// <summary>The environment's word for the file.</summary>
    public const string Switch = "FRONTEND_TESTS_CRASH";

    public static void Initialize()
    {
        if (Environment.GetEnvironmentVariable(Switch) is { Length: > 0 } file)
        {
            new Thread(() =>
            {
                while (!File.Exists(file))
                {
                    Thread.Sleep(20);
                }

                throw new InvalidOperationException("a thread of the background fails, as a test wants it");
            })
            { IsBackground = true }.Start();
        }
    }
}
