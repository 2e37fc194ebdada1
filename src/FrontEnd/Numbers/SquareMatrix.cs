using System.Numerics;

namespace FrontEnd.Numbers;

/// <summary>Products of small matrices, held row after row in one array.</summary>
internal static class SquareMatrix
{
    /// <summary>sum += left·right.</summary>
    public static void AddProduct(ReadOnlySpan<double> left, ReadOnlySpan<double> right, Span<double> sum, int n)
    {
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> weights = left.Slice(i * n, n);
            Span<double> row = sum.Slice(i * n, n);
            int j = 0;
            for (; j + Vector<double>.Count <= n; j += Vector<double>.Count)
            {
                var lanes = new Vector<double>(row[j..]);
                for (int k = 0; k < weights.Length; k++)
                {
                    lanes += new Vector<double>(weights[k]) * new Vector<double>(right[((k * n) + j)..]);
                }

                lanes.CopyTo(row[j..]);
            }

            for (; j < n; j++)
            {
                double entry = row[j];
                for (int k = 0; k < weights.Length; k++)
                {
                    entry += weights[k] * right[(k * n) + j];
                }

                row[j] = entry;
            }
        }
    }

    /// <summary>sum += matrix·x.</summary>
    public static void AddProduct(ReadOnlySpan<double> matrix, ReadOnlySpan<double> x, Span<double> sum)
    {
        int n = x.Length;
        for (int i = 0; i < sum.Length; i++)
        {
            sum[i] += Dot(matrix.Slice(i * n, n), x);
        }
    }

    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        int i = 0;
        Vector<double> lanes = Vector<double>.Zero;
        for (; i + Vector<double>.Count <= left.Length; i += Vector<double>.Count)
        {
            lanes += new Vector<double>(left[i..]) * new Vector<double>(right[i..]);
        }

        double sum = Vector.Sum(lanes);
        for (; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum;
    }

    /// <summary>xᵀ·matrix·x.</summary>
    public static double Form(ReadOnlySpan<double> matrix, ReadOnlySpan<double> x)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            sum += x[i] * Dot(matrix.Slice(i * x.Length, x.Length), x);
        }

        return sum;
    }

    /// <summary>sum += a·row.</summary>
    public static void AddScaled(double a, ReadOnlySpan<double> row, Span<double> sum)
    {
        int j = 0;
        var scale = new Vector<double>(a);
        for (; j + Vector<double>.Count <= row.Length; j += Vector<double>.Count)
        {
            (new Vector<double>(sum[j..]) + (scale * new Vector<double>(row[j..]))).CopyTo(sum[j..]);
        }

        for (; j < row.Length; j++)
        {
            sum[j] += a * row[j];
        }
    }
}
