using System.Text;
using CsCheck;

namespace GddWatch.Tests.Feeds;

/// <summary>Spoils a good file as disks, transfers, spreadsheets and hands do.</summary>
internal static class SpoiledFile
{
    private static readonly byte[][] Pieces =
    [
        [0], "\""u8.ToArray(), ","u8.ToArray(), "-"u8.ToArray(), "9"u8.ToArray(), " "u8.ToArray(), "\n"u8.ToArray(), "\r"u8.ToArray(), "\r\n"u8.ToArray(), [0xFF], [0xC3], ";"u8.ToArray(), "."u8.ToArray(),
        "e5"u8.ToArray(), "\t"u8.ToArray(), "99999999999999999999"u8.ToArray(), "1e308"u8.ToArray(), "-9999"u8.ToArray(), "NaN"u8.ToArray(), "\u00B0é"u8.ToArray(), [.. Enumerable.Repeat((byte)'9', 300)],
        [.. Enumerable.Repeat((byte)'x', 20_000)],
    ];

    /// <summary>One to four mutations: which, where, and two numbers that each uses as it needs.</summary>
    public static Gen<(int Kind, int Where, int A, int B)[]> Mutations { get; } =
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, int.MaxValue - 1], Gen.Int[0, 1_000_000], Gen.Int[0, 1_000_000]).Array[1, 4];

    /// <summary>The file after the mutations, one after the other.</summary>
    public static byte[] Of(byte[] good, (int Kind, int Where, int A, int B)[] mutations)
    {
        byte[] bytes = good;
        foreach ((int kind, int where, int a, int b) in mutations)
        {
            if (bytes.Length > 0) bytes = Spoil(bytes, kind, where % bytes.Length, a, b);
        }

        return bytes;
    }

    private static byte[] Spoil(byte[] bytes, int kind, int at, int a, int b)
    {
        switch (kind)
        {
            case 0:
                byte[] flipped = [.. bytes];
                flipped[at] ^= (byte)(1 << (a % 8));
                return flipped;
            case 1:
                return [.. bytes[..at], .. Pieces[a % Pieces.Length], .. bytes[(at + 1)..]];
            case 2:
                return [.. bytes[..at], .. Pieces[a % Pieces.Length], .. bytes[at..]];
            case 3:
                return [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + 1 + (a % 20))..]];
            case 4:
                int end = Math.Min(bytes.Length, at + 1 + (a % 300));
                return [.. bytes[..end], .. bytes[at..end], .. bytes[end..]];
            case 5:
                return bytes[..at];
            case 6:
                return a % 2 == 0 ? [0xEF, 0xBB, 0xBF, .. bytes] : [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Encoding.Latin1.GetString(bytes))];
            default:
                return SpoilLine(bytes, kind, a, b);
        }
    }

    // What a hand does in a spreadsheet or an editor: with whole lines and fields.
    private static byte[] SpoilLine(byte[] bytes, int kind, int a, int b)
    {
        List<string> lines = [.. Encoding.Latin1.GetString(bytes).Split('\n')];
        int line = a % lines.Count;
        int other = b % lines.Count;
        List<string> fields = [.. lines[line].Split(',')];
        int field = b % fields.Count;
        switch (kind)
        {
            case 7:
                (lines[line], lines[other]) = (lines[other], lines[line]);
                break;
            case 8:
                lines.Insert(other, lines[line]);
                break;
            case 9:
                (fields[field], fields[a % fields.Count]) = (fields[a % fields.Count], fields[field]);
                lines[line] = string.Join(',', fields);
                break;
            case 10:
                fields.RemoveAt(field);
                lines[line] = string.Join(',', fields);
                break;
            case 11:
                fields[field] = Encoding.Latin1.GetString(Pieces[a % Pieces.Length]);
                lines[line] = string.Join(',', fields);
                break;
            default:
                fields.Insert(field, fields[b % fields.Count]);
                lines[line] = string.Join(',', fields);
                break;
        }

        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }
}
