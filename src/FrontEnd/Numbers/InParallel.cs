using System.Runtime.ExceptionServices;

namespace FrontEnd.Numbers;

/// <summary>The same function over all of a list, on all cores, results in the list's order.</summary>
/// <remarks>Not the query operators of System.Linq.Parallel: they cannot be compiled ahead of time without warnings.</remarks>
public static class InParallel
{
    public static TOut[] Map<TIn, TOut>(IReadOnlyList<TIn> items, Func<TIn, TOut> work, CancellationToken cancellation = default)
    {
        var results = new TOut[items.Count];
        try
        {
            Parallel.For(0, items.Count, new ParallelOptions { CancellationToken = cancellation }, at => results[at] = work(items[at]));
        }
        catch (AggregateException several)
        {
            // As one thread would have thrown it.
            ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
        }

        return results;
    }
}
