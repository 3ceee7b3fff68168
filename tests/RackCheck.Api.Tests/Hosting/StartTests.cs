using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Hosting;

namespace RackCheck.Api.Tests.Hosting;

/// <summary>What prevents a start is named in one line.</summary>
public sealed class StartTests
{
    private const string Open = "urls=http://*:8080";
    private const string Key = "Access:Clients:0:KeyHashes:0=0000000000000000000000000000000000000000000000000000000000000000";

    /// <summary>Why the service does not start with these settings, <c>Section:Name=value</c>; null if it does.</summary>
    internal static string? FaultOf(params string[] settings)
    {
        var fault = Record.Exception(() =>
        {
            var app = KestrelService.Build(static _ => { }, settings);
            Startup.Check(app);
            app.Services.GetRequiredService<IProductCatalogue>();
        });
        return fault is null ? null : StartFault.Describe(fault);
    }

    [Theory]
    [InlineData("Service:MaxBodyByte=1000000", "There is no setting Service:MaxBodyByte.")]
    [InlineData("Admission:Checks:Worker=1", "There is no setting Admission:Checks:Worker.")]
    [InlineData("Access:Clients:0:Nam=shop", "There is no setting Access:Clients:0:Nam.")]
    [InlineData("Servce:MaxBodyBytes=1000000", "There is no setting Servce.")]
    [InlineData("Service:MaxBodyBytes=many", "Failed to convert configuration value 'many' at 'Service:MaxBodyBytes' to type 'System.Int32'.")]
    [InlineData("Service:MaxBodyBytes=1", "Service: The field MaxBodyBytes must be between 1024 and 67108864.")]
    [InlineData("Admission:Checks:Queue=0", "Admission: Checks: The field Queue must be between 1 and 100000.")]
    [InlineData("Cors:Origins:0=https://shop.example/", "Cors: 'https://shop.example/' is not an origin, such as https://shop.example.")]
    [InlineData("Access:Jwt:Authority=https://issuer.example", "Access: Jwt:Authority and Jwt:Audience are set together.")]
    [InlineData("Access:Clients:0:Name=shop", "Access: Client 'shop' needs one or two key hashes of 64 hexadecimal digits (SHA-256).")]
    public void Wrong_setting_is_named_in_one_line(string setting, string expected) => Assert.Equal(expected, FaultOf(setting));

    [Fact]
    public void Unknown_scope_is_named() => Assert.Equal(
        "Access: Client 'shop' has the unknown scope 'all'. Scopes: check, plan, documents.",
        FaultOf("Access:Clients:0:Name=shop", Key, "Access:Clients:0:Scopes:0=all"));

    [Fact]
    public void Missing_catalogue_file_is_named() =>
        Assert.StartsWith("The catalogue file /none/products.json cannot be read.", FaultOf("Catalogue:File=/none/products.json"), StringComparison.Ordinal);

    [Fact]
    public void Variables_of_other_programs_are_no_settings() => Assert.Null(FaultOf("Cargo:Home=/none", "npm:config:cache=/none"));

    [Fact]
    public void Production_is_not_open_to_other_machines() =>
        Assert.StartsWith("http://*:8080 can be reached from other machines, but there are no API keys", FaultOf(Open), StringComparison.Ordinal);

    [Fact]
    public void Production_starts_with_keys_with_an_issuer_on_loopback_or_if_told_to_be_open()
    {
        Assert.Null(FaultOf());
        Assert.Null(FaultOf("urls=http://127.0.0.1:8080;http://localhost:8081;http://[::1]:8082"));
        Assert.Null(FaultOf(Open, "Access:Clients:0:Name=shop", Key));
        Assert.Null(FaultOf(Open, "Access:Jwt:Authority=https://issuer.example", "Access:Jwt:Audience=rack-check"));
        Assert.Null(FaultOf(Open, "Access:Anonymous=true"));
    }

    [Theory]
    [InlineData("http_ports=8080")]
    [InlineData("Kestrel:Endpoints:Main:Url=http://0.0.0.0:8080")]
    [InlineData("urls=http://127.0.0.1:8080;http://192.0.2.1:8080")]
    public void Every_way_to_set_an_address_is_looked_at(string setting) =>
        Assert.Contains("can be reached from other machines", FaultOf(setting), StringComparison.Ordinal);

    [Fact]
    public async Task Process_writes_one_line_to_standard_error_and_exits_with_1()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Program).Assembly.Location, "--urls", "http://127.0.0.1:0"])
        {
            WorkingDirectory = AppContext.BaseDirectory,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        start.Environment["Admission__Checks__WaitMs"] = "soon";
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        const string Line = "rack-check cannot start: Failed to convert configuration value 'soon' at 'Admission:Checks:WaitMs' to type 'System.Int32'.\n";
        Assert.Equal(Line, await error);
        Assert.Equal(("", 1), (await output, process.ExitCode));
    }
}
