using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Model;

namespace RackCheck.Api.Endpoints;

/// <summary>Common setup of operations that take a document.</summary>
internal static class RequestMetadata
{
    /// <summary>Adds the problem responses of a request with a document to the contract.</summary>
    public static RouteHandlerBuilder RefusesWithProblems(this RouteHandlerBuilder operation)
    {
        foreach (var status in (ReadOnlySpan<int>)[400, 406, 408, 413, 415, 422, 503])
        {
            operation.Produces<Problem>(status, Problems.MediaType);
        }

        return operation;
    }

    /// <summary>Names the query parameters of an operation.</summary>
    public static RouteHandlerBuilder TakesQuery(this RouteHandlerBuilder operation, params string[] names) => operation.WithMetadata(new QueryNames(names));

    /// <summary>The refusal of a document that was not read.</summary>
    public static Reply Refuse<T>(this ReadResult<T> read)
        where T : class =>
        read.IsJson
            ? new Reply(null, ProblemKind.Invalid, Problems.NothingChecked, read.Faults)
            : new Reply(null, ProblemKind.NotJson, read.Faults[0].Detail, read.Faults);
}
