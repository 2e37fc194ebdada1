using System.Runtime.ExceptionServices;

namespace FrontEnd.Numbers;

/// <summary>The same function over all of a list, on all cores, results in the list's order.</summary>
/// <remarks>Not the query operators of System.Linq.Parallel: they cannot be compiled ahead of time without warnings.</remarks>
internal static class InParallel
{
    public static TOut[] Map<TIn, TOut>(IReadOnlyList<TIn> items, Func<TIn, TOut> work, CancellationToken cancellation = default)
    {
        var results = new TOut[items.Count];
        For(items.Count, null, at => results[at] = work(items[at]), cancellation);
        return results;
    }

    /// <summary>Does the same work for the numbers from 0 to below <paramref name="count"/>.</summary>
    /// <param name="count">How many.</param>
    /// <param name="threads">Most threads at a time; null for as many as there are processors.</param>
    /// <param name="work">What is done.</param>
    /// <param name="cancellation">Ends it with <see cref="OperationCanceledException"/>.</param>
    public static void For(int count, int? threads, Action<int> work, CancellationToken cancellation = default)
    {
        try
        {
            Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads ?? -1, CancellationToken = cancellation }, work);
        }
        catch (AggregateException several)
        {
            // As one thread would have thrown it.
            ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
        }
    }

    /// <summary>The same with something that only one at a time may use: as many are made as work at a time.</summary>
    /// <returns>All that were made.</returns>
    public static IReadOnlyCollection<T> ForWith<T>(
        int count, int? threads, Func<T> make, Action<T, int> work, CancellationToken cancellation = default)
    {
        var idle = new Stack<T>();
        For(count, threads, at =>
        {
            T? one;
            lock (idle)
            {
                idle.TryPop(out one);
            }

            one ??= make();
            work(one, at);
            lock (idle)
            {
                idle.Push(one);
            }
        }, cancellation);
        return idle;
    }
}
