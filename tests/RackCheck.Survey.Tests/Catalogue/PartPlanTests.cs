using System.Reflection;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Survey.Tests.Catalogue;

public sealed class PartPlanTests
{
    [Fact]
    public void No_member_that_a_product_can_tell_is_forgotten()
    {
        Filled<ItemFacts>(new Item { Id = "a" }, new ProductItem());
        Filled<PduFacts>(new Pdu { Id = "a", Supply = "A" }, new ProductPdu());
        Filled(new Cabinet(), new Cabinet());
    }

    // Every member by itself: set in the product alone it is filled in, and taken out again where nothing changed it.
    private static void Filled<T>(T given, T told)
        where T : class
    {
        foreach (var property in typeof(T).GetProperties().Where(p => p.Name != nameof(Item.PartNumber)))
        {
            var source = Clone(told);
            var value = Some(property.PropertyType);
            property.SetValue(source, value);
            var names = new List<string>();
            var result = PartPlan<T>.Instance.Fill(given, source, names);
            Assert.Equal(given.GetType(), result.GetType());
            Assert.Equal(value, property.GetValue(result));
            Assert.Null(property.GetValue(given));
            Assert.Single(names);
            Assert.Null(property.GetValue(PartPlan<T>.Instance.Restore(given, result, Clone(result))));
        }
    }

    private static T Clone<T>(T record) => (T)record!.GetType().GetMethod("<Clone>$")!.Invoke(record, null)!;

    private static object Some(Type type)
    {
        var value = Nullable.GetUnderlyingType(type) ?? type;
        return value == typeof(string) ? "words"
            : value == typeof(int) ? 7
            : value == typeof(double) ? 7.5
            : value == typeof(bool) ? true
            : value.IsEnum ? Enum.GetValues(value).GetValue(1)!
            : value.IsInterface ? Array.CreateInstance(value.GetGenericArguments()[0], 0)
            : value == typeof(Door) ? new Door { Style = DoorStyle.Glazed }
            : Activator.CreateInstance(value)!;
    }
}
