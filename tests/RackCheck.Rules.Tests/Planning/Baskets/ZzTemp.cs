using System.Diagnostics;
using System.Text;
using CsCheck;
using RackCheck.Model;
using static RackCheck.Rules.Tests.Planning.Baskets.DemoCatalogue;
namespace RackCheck.Rules.Tests.Planning.Baskets;
public sealed class ZzTemp
{
    [Fact]
    public void Stats()
    {
        var o = new StringBuilder();
        var gen = (Gen<BasketRequest>)typeof(BasketPropertyTests).GetField("Baskets", System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)!.GetValue(null)!;
        var list = gen.Array[60].Single();
        int unmet0 = 0; var rules = new Dictionary<string,int>(); var what = new Dictionary<string,int>(); var miss = new Dictionary<string,int>();
        foreach (var r in list)
        {
            var w = Stopwatch.StartNew();
            var rep = Plan(r);
            o.AppendLine($"{w.ElapsedMilliseconds} ms, items {rep.Rack.Items.Count}, cab {(r.Lines.Any(l=>l.PartNumber.Contains("CAB"))?"own":"none")} {rep.Rack.Cabinet!.PartNumber}, missing {rep.MissingLines.Count}, unmet {string.Join(" | ", rep.Unmet.Select(u=>u.What))}, excess {rep.ExcessLines.Count}, {rep.Verdict}/{rep.CompletedVerdict} findings {rep.Report.Findings.Count} na {rep.Report.NotAssessed.Count}");
            unmet0 += rep.Unmet.Count == 0 ? 1 : 0;
            foreach (var m in rep.MissingLines) { miss[m.PartNumber] = miss.GetValueOrDefault(m.PartNumber) + 1; }
            var second = Plan(Completed(r, rep));
            foreach (var f in second.Report.Findings) { rules[f.Rule + " " + f.Severity] = rules.GetValueOrDefault(f.Rule + " " + f.Severity) + 1; }
            foreach (var f in second.Report.NotAssessed.SelectMany(n => n.Missing.Select(m => n.Rule + " " + System.Text.RegularExpressions.Regex.Replace(m, "[0-9]+", "*")))) { rules["NA " + f] = rules.GetValueOrDefault("NA " + f) + 1; }
        }
        o.AppendLine($"unmet0 {unmet0}");
        foreach (var (k, v) in rules.OrderBy(x => x.Key)) { o.AppendLine($"  {k}: {v}"); }
        foreach (var (k, v) in miss.OrderBy(x => x.Key)) { o.AppendLine($"  {k}: {v}"); }
        File.WriteAllText("/tmp/w-basket/stats.txt", o.ToString());
        var big = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 2), ("SRV-110", 2), ("DRV-4", 1), ("AMP-2", 2), ("KD-2", 1), ("DSP-8", 1), ("KVM-8", 1), ("SW-24", 1)));
        File.WriteAllText("/tmp/w-basket/big.json", TextOf(big));
    }
}
