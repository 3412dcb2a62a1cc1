using System.IO.Compression;
using System.Text;

namespace PartMatch.Web.Tests;

/// <summary>Two small invented books with one of each thing that a route has to show. Small enough to check an answer by reading them.</summary>
internal static class SmallBooks
{
    public static IReadOnlyDictionary<string, string> Shop { get; } = Files(
        """
        == book.csv
        format,book,kind,title,maker,uses,licence,note
        1,shop,common,Shared kinds,,,CC0-1.0,
        == kinds.csv
        kind,name,running,reviewed,cautions
        bolt,Bolt,cannot-alter,yes,tightening
        injector,Injector,can-alter,yes,fuel-pressure
        pump,Coolant pump,can-alter,yes,hot-parts
        == features.csv
        kind,feature,name,type,unit,choices
        bolt,length,length under the head,quantity,mm,
        injector,length,length,quantity,mm,
        injector,rated-fluid,rated with,choice,,n-heptane|petrol
        injector,rated-flow,rated flow,quantity,cm3/min,
        injector,rated-pressure,rated at,quantity,bar,
        pump,drive,driven by,choice,,belt-back|belt-rib
        pump,rotation,rotation seen from the front,choice,,anticlockwise|clockwise
        == rules.csv
        kind,feature,effect,relation,allowance,unit,work,consequence,note
        bolt,length,stops,same,1,mm,,injury,
        injector,length,stops,same,0.2,mm,,loss,
        pump,drive,stops,same,,,,loss,
        pump,rotation,alters,same,,,,damage,
        == checks.csv
        kind,feature,method,minutes,uncertainty,unit,how
        bolt,length,steel-rule,1,0.5,mm,under the head to the tip
        pump,drive,eye,1,,,look at the pulley
        pump,rotation,photo,1,,,the curve of the vanes
        """);

    public static IReadOnlyDictionary<string, string> Duo { get; } = Files(
        """
        == book.csv
        format,book,kind,title,maker,uses,licence,note
        1,duo-2,family,Duo 2,ardlow,shop,CC0-1.0,invented for the tests
        == makers.csv
        maker,name
        ardlow,Ardlow
        brask,Brask
        == variants.csv
        variant,name,built_from,built_to,serial_from,serial_to,evidence
        a,A pump set,2014-01,2019-12,,,ev-1
        b,B cart,2016-01,,,,ev-1
        == engine.csv
        variant,property,value,minus,plus,unit,uncertainty,evidence
        a,bore,80.00,0.00,0.02,mm,,ev-1
        a,cylinders,2,,,,,ev-1
        a,fuel-system,port-injected,,,,,ev-1
        a,induction,natural,,,,,ev-1
        a,injectors-per-cylinder,1,,,,,ev-1
        a,stroke,70.0,,,mm,,ev-1
        b,fuel-system,carburetted,,,,,ev-1
        == positions.csv
        position,name,group,kind,role
        coolant-pump,Coolant pump,cooling,pump,
        injector,Injector,fuel,injector,injector
        pump-bolt,Pump bolt,cooling,bolt,
        == parts.csv
        part,kind,name,note,evidence
        ardlow:12/34,pump,Coolant pump,,ev-1
        ardlow:12/35,pump,Coolant pump,,ev-1
        ardlow:12/36,pump,Coolant pump,newer,ev-1
        ardlow:77-1,bolt,Pump bolt,,ev-1
        ardlow:I-1,injector,Injector,,ev-1
        brask:77-1,bolt,Bolt of another maker,,ev-2
        == values.csv
        part,feature,value,minus,plus,unit,uncertainty,evidence
        ardlow:12/34,drive,belt-rib,,,,,ev-1
        ardlow:12/34,rotation,clockwise,,,,,ev-1
        ardlow:12/35,drive,belt-rib,,,,,ev-1
        ardlow:12/35,rotation,anticlockwise,,,,,ev-1
        ardlow:77-1,length,26.0,0.2,0.2,mm,,ev-1
        ardlow:I-1,length,52.0,0.1,0.1,mm,,ev-1
        ardlow:I-1,rated-flow,250,5,5,cm3/min,,ev-1
        ardlow:I-1,rated-fluid,n-heptane,,,,,ev-1
        ardlow:I-1,rated-pressure,3.0,,,bar,,ev-1
        brask:77-1,length,40.0,,,mm,0.5,ev-2
        == numbers.csv
        number,sort,part,note
        ardlow:C-9,casting-mark,ardlow:12/34,
        brask:S 501,supplier,ardlow:12/34,
        == fitments.csv
        variant,position,part,built_from,built_to,serial_from,serial_to,mark,quantity,evidence
        a,coolant-pump,ardlow:12/34,,,,,,1,ev-1
        a,injector,ardlow:I-1,,,,,,2,ev-1
        a,pump-bolt,ardlow:77-1,,,,,,3,ev-1
        b,coolant-pump,ardlow:12/35,,,,,,1,ev-1
        b,injector,none,,,,,,0,ev-1
        == supersessions.csv
        old_part,new_part,way,quantity,with,built_from,built_to,serial_from,serial_to,variants,evidence,note
        ardlow:12/34,ardlow:12/36,one,1,,,,,,,ev-1,
        == evidence.csv
        evidence,grade,date,author,source,derived_from,retracted_on,retracted_why
        ev-1,makers-document,2015-02,,parts list 3,,,
        ev-2,measured,2024-05-01,bench,one example,,,
        """);

    /// <summary>The book as the zip that a client sends.</summary>
    public static byte[] Zip(IReadOnlyDictionary<string, string> files)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in files)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return bytes.ToArray();
    }

    /// <summary>The same book with one file changed, or added.</summary>
    public static IReadOnlyDictionary<string, string> With(this IReadOnlyDictionary<string, string> files, string name, string text) =>
        new Dictionary<string, string>(files) { [name] = text };

    private static Dictionary<string, string> Files(string text) => text
        .Split("== ", StringSplitOptions.RemoveEmptyEntries)
        .Select(file => file.Split('\n', 2))
        .ToDictionary(file => file[0].Trim(), file => file[1]);
}
