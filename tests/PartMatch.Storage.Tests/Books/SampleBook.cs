using System.Text;
using PartMatch.Core.Photos;
using PartMatch.Storage.Books;

namespace PartMatch.Storage.Tests.Books;

/// <summary>A small sound book in canonical form, and ways to spoil it. All invented.</summary>
internal sealed class SampleBook
{
    /// <summary>One pixel as PNG, as the base keeps it.</summary>
    public static Photo Picture { get; } = ((PhotoRead)PhotoReader.Read(Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACXRFWHRBdXRob3IAbWUGIHD6AAAACklEQVR42mNoAAAAggCB2kUIOwAAAABJRU5ErkJggg=="))).Photo;

    private readonly SortedDictionary<string, string> _files = new(StringComparer.Ordinal);

    private SampleBook(params IEnumerable<(string File, string Text)> files)
    {
        foreach (var (file, text) in files)
        {
            _files[file] = text + "\n";
        }
    }

    /// <summary>Kinds that a family shares with others.</summary>
    public static SampleBook Common() => new(
        ("book.csv", """
            format,book,kind,title,maker,uses,licence,note
            1,shared,common,Shared kinds,,,CC0-1.0,
            """),
        ("evidence.csv", """
            evidence,grade,date,author,source,derived_from,retracted_on,retracted_why
            ev-0001,makers-document,2020-01,,wall chart,,,
            """),
        ("features.csv", """
            kind,feature,name,type,unit,choices
            bush,bore,bore,quantity,mm,
            bush,grooves,grooves,count,,
            bush,lining,lining,choices,,bronze|polymer|tin
            injector,dead-time,dead time,curve,ms,
            injector,fuel,made for,choice,,e85|petrol
            injector,length,length,quantity,mm,
            shaft,lobes,lobes,count,,
            shaft,nose,nose,choice,,plain|tang
            shaft,outer,outer diameter,quantity,mm,
            """),
        ("kinds.csv", """
            kind,name,running,reviewed,cautions
            bush,Bush,cannot-alter,yes,
            injector,Injector,can-alter,no,fuel-pressure|hot-parts
            shaft,Shaft,can-alter,yes,tightening
            """),
        ("makers.csv", """
            maker,name
            orrin,Orrin & Daughters
            """),
        ("parts.csv", """
            part,kind,name,note,evidence
            orrin:B-77,bush,Plain bush,,ev-0001
            """),
        ("rules.csv", """
            kind,feature,effect,relation,allowance,unit,work,consequence,note
            bush,bore,stops,same,0.01,mm,,damage,
            bush,bore,work,at-most,,,ream-bush,loss,
            bush,lining,alters,covers,,,,nuisance,
            shaft,nose,stops,same,,,,injury,"two words, a comma"
            """),
        ("checks.csv", """
            kind,feature,method,minutes,uncertainty,unit,how
            bush,bore,gauge,4,0.002,mm,largest of three readings
            shaft,nose,photo,1,,,photo of the front end
            shaft,outer,photo,1,0.5,mm,beside a ruler
            """),
        ("shots.csv", """
            kind,shot,name,shows,how
            shaft,mark,stamped mark,,
            shaft,whole,whole shaft beside a ruler,nose|outer,"lay it flat, a ruler along it, camera square on"
            """),
        ("works.csv", """
            work,name,minutes,days,price,currency,who,needs_first,changes,undo,cautions
            ream-bush,ream the bush,30,1.5,40.00,EUR,machine shop,bush|shaft,bush.bore,no,tightening
            """),
        ("reminders.csv", """
            kind,reminder,at,works,text,evidence,note
            bush,ream,worked,ream-bush,"Reamed in line, and washed?",ev-0001,
            injector,leak,start,,Does it leak?,,"common practice, no source"
            """));

    /// <summary>A family that uses <see cref="Common"/> and fills every other file.</summary>
    public static SampleBook Family() => new(
        ("book.csv", """
            format,book,kind,title,maker,uses,licence,note
            1,lark-2,family,Lark 2,marl,shared,CC0-1.0,
            """),
        ("makers.csv", """
            maker,name
            marl,Marl Engines
            """),
        ("variants.csv", """
            variant,name,built_from,built_to,serial_from,serial_to,evidence
            la,LA pump set,2015-03,2018-11-30,100,41206,ev-0001
            lb,LB cart,,,41207,,
            """),
        ("engine.csv", """
            variant,property,value,minus,plus,unit,uncertainty,evidence
            la,bore,85.00,0.00,0.02,mm,,ev-0001
            la,cylinders,2,,,,,ev-0001
            la,fuel-system,port-injected,,,,,
            """),
        ("positions.csv", """
            position,name,group,kind,role
            front-bush,Front bush,bottom-end,bush,
            injector,Injector,fuel,injector,injector
            main-shaft,Main shaft,bottom-end,shaft,
            """),
        ("access.csv", """
            position,minutes,how
            front-bush,95.5,sump and front cover off
            injector,0,
            """),
        ("parts.csv", """
            part,kind,name,note,evidence
            marl:B-1/2,bush,Front bush,"first line
            second ""line"", with a comma",ev-0001
            marl:B-1/3,bush,Front bush wide,,
            marl:I-1,injector,Injector,,ev-0002
            marl:S-100,shaft,Main shaft,Grüße – ½ Ω,ev-0001
            """),
        ("numbers.csv", """
            number,sort,part,note
            orrin:CAST 9,casting-mark,marl:B-1/2,
            orrin:CAST 9,casting-mark,marl:B-1/3,
            orrin:S100,supplier,marl:I-1,
            """),
        ("values.csv", """
            part,feature,value,minus,plus,unit,uncertainty,evidence
            marl:B-1/2,bore,25.400,0.005,0.010,mm,0.001,ev-0001
            marl:B-1/2,bore,25.41,,,mm,0.005,ev-0002
            marl:B-1/2,grooves,2,,,,,ev-0001
            marl:B-1/2,lining,bronze|tin,,,,,
            marl:I-1,length,2.047,,,in,,ev-0002
            marl:S-100,nose,tang,,,,,ev-0001
            marl:S-100,outer,-0.5,0,0,mm,,ev-0001
            """),
        ("curves.csv", """
            part,curve,x,x_unit,y,y_unit,value,unit,evidence
            marl:I-1,dead-time,12.0,V,3.0,bar,1.10,ms,ev-0001
            marl:I-1,dead-time,14.0,V,3.0,bar,0.92,ms,ev-0001
            """),
        ("fitments.csv", """
            variant,position,part,built_from,built_to,serial_from,serial_to,mark,quantity,evidence
            la,front-bush,marl:B-1/2,,,,20000,,1,ev-0001
            la,front-bush,marl:B-1/3,,,20001,,wide flange,1,ev-0001
            la,injector,marl:I-1,,,,,,2,
            lb,injector,none,,,,,,0,ev-0001
            lb,main-shaft,marl:S-100,2016-05,2017-06-01,,,,1,ev-0001
            """),
        ("needs.csv", """
            variant,position,feature,effect,relation,value,minus,plus,unit,uncertainty,evidence,note
            la,front-bush,bore,work,at-most,25.45,0,0,mm,,ev-0001,
            la,injector,fuel,stops,one-of,e85|petrol,,,,,,
            lb,main-shaft,present,stops,same,yes,,,,,,
            """),
        ("joints.csv", """
            joint,left_position,left_feature,relation,right_position,right_feature,min,max,unit,effect,work,consequence,variants,evidence
            shaft-in-bush,main-shaft,outer,band,front-bush,bore,0.005,,mm,work,ream-bush,damage,la|lb,ev-0001
            """),
        ("stacks.csv", """
            stack,terms,min,max,unit,effect,work,consequence,variants,evidence
            bush-clearance,+front-bush.bore|-main-shaft.outer|+1.5,0.01,0.05,mm,stops,,injury,,ev-0001
            """),
        ("selects.csv", """
            position,measure_position,measure_feature,from,to,unit,part,evidence
            front-bush,main-shaft,outer,24.980,24.990,mm,marl:B-1/2,ev-0001
            """),
        ("companions.csv", """
            companion,when_position,when_feature,when_relation,when_value,when_unit,then_position,then_feature,then_relation,then_value,then_unit,variants,evidence,note
            tang-needs-bush,main-shaft,nose,same,tang,,front-bush,bore,at-least,25.3,mm,,ev-0001,
            tang-needs-injector,main-shaft,nose,one-of,plain|tang,,injector,present,same,yes,,lb,,
            """),
        ("supersessions.csv", """
            old_part,new_part,way,quantity,with,built_from,built_to,serial_from,serial_to,variants,evidence,note
            marl:B-1/2,marl:B-1/3,one,1,marl:S-100|orrin:B-77,,,20001,,la,ev-0003,
            """),
        ("contents.csv", """
            set,part,quantity,certain,note
            marl:S-100,marl:B-1/2,2,yes,
            marl:S-100,marl:B-1/3,,possible,
            """),
        ("pairs.csv", """
            part_a,part_b,judgement,evidence,note
            marl:B-1/2,orrin:B-77,trap,ev-0001,the oil hole is missing
            marl:S-100,marl:B-1/2,harmless,ev-0003,
            """),
        ("evidence.csv", """
            evidence,grade,date,author,source,derived_from,retracted_on,retracted_why
            ev-0001,makers-document,2019-04-01,,parts list,,,
            ev-0002,measured,2026-02-14,bench 2,bench sheet 17,,,
            ev-0003,reported,2026-03,,copied,ev-0002,2026-04-01,wrong part
            ev-0004,ran-under-load,2026-05-02,bench 2,log of the brake stand,,,
            ev-0005,measured,2026-05-03,bench 2,sheet of the donor,,,
            """),
        ("sources.csv", """
            evidence,speaks_of,instrument,hours,output,output_unit,fuel,page,note
            ev-0001,number,,,,,,page 12,
            ev-0004,number,,41.5,12.0,kW,petrol,,"flat out, two heats"
            ev-0005,item,outside micrometer 25-50,,,,,,
            """),
        ("findings.csv", """
            finding,part,variant,position,axis,outcome,built_from,built_to,serial_from,serial_to,with,evidence,note
            fi-0001,marl:B-1/2,la,front-bush,mounts,with-work,,,,20000,injector=none|main-shaft=marl:S-100,ev-0001,
            fi-0002,marl:S-100,lb,main-shaft,runs,same,,,,,,ev-0004,
            fi-0003,none,la,injector,runs,differently,2015-03,2016-12,,,,ev-0003,
            """),
        ("items.csv", """
            item,part,origin,condition,evidence,note
            it-0001,marl:S-100,donor,turned once by hand,ev-0005,
            it-0002,marl:I-1,,,,
            """),
        ("readings.csv", """
            item,feature,value,unit,uncertainty,instrument,read_on,evidence,note
            it-0001,nose,tang,,,,2026-05-03,,
            it-0001,outer,24.985,mm,0.004,outside micrometer 25-50,2026-05-03,ev-0005,smallest of six
            """),
        ("works-done.csv", """
            item,work,done_on,note
            it-0001,ream-bush,2026-05-04,
            """),
        ("limits.csv", """
            kind,feature,part,min,max,unit,consequence,evidence,note
            bush,grooves,,2,,,loss,,
            shaft,outer,,24.95,25.00,mm,damage,ev-0001,
            shaft,outer,marl:S-100,24.97,,mm,damage,ev-0001,
            """),
        ("torques.csv", """
            variant,position,pass,built_from,built_to,serial_from,serial_to,value,minus,plus,unit,lubrication,sequence,single_use,evidence,note
            la,front-bush,1,,,,,20,2,2,N·m,oiled,crosswise from the middle,stretch,ev-0001,
            la,front-bush,2,,,,,90,,,deg,,,,ev-0001,"with a disc, not by eye"
            la,front-bush,1,,,,,15.5,,,lbf·ft,,,,ev-0003,
            """),
        ("openings.csv", """
            position,off_first,variants,evidence,note
            front-bush,injector,,,
            front-bush,main-shaft,la,ev-0001,pressed against its collar
            main-shaft,injector,,ev-0001,
            """),
        ("bench-order.csv", """
            first,then,how,variants,evidence,note
            front-bush,injector,,,,
            front-bush,main-shaft,on-bench,la,ev-0001,"pressed in, cold"
            main-shaft,injector,into,,,
            """),
        ("renewals.csv", """
            opened,renewed,amount,unit,bead,cure_hours,variants,evidence,note
            front-bush,main-shaft,,,,,la|lb,ev-0001,
            main-shaft,injector,12.5,mL,"2 mm, inside the bolt holes",24,,ev-0001,degrease first
            """),
        ("weak-points.csv", """
            weak_point,variant,position,what,remedy_part,remedy_work,built_from,built_to,serial_from,serial_to,evidence,note
            bush-creeps,la,front-bush,The bush creeps outwards.,marl:B-1/3,ream-bush,2015-03,,,20000,ev-0001,seen on two
            """),
        ("photos.csv", $"""
            photo,image,evidence,item,caption
            ph-0001,{ImageName.Of(Picture)},ev-0005,it-0001,the tang
            """),
        ("listings.csv", """
            listing,seen_on,title,address,text
            f10b07c45b46af7f662b16051f901e0fb4298780ea33e873ae474e14f2c1d42d,2026-06-01,Front bush,https://millrace.example/9,"Front bush, used
            Number B 1.2, ""as photographed""
            oil in the bore"
            """),
        ("offers.csv", """
            offer,seller,part,number_as_written,price,currency,pack,stock,condition,level,core_deposit,seen_on,days_min,days_max,shipping,note,core_part,returns_days,restocking,freight_back,returnable,listing
            of-0001,millrace,marl:B-1/2,B 1.2,84.00,GBP,2,4,used,,20.00,2026-06-01,3,6,,"oil in the bore, wipes out",the old bush,30,10,buyer,yes,f10b07c45b46af7f662b16051f901e0fb4298780ea33e873ae474e14f2c1d42d
            of-0002,millrace,marl:S-100,,1250,EUR,1,,refurbished,bare,,2026-05-01,,,12.50,,,,,seller,no,
            of-0003,millrace,,QZ-77,12.5,EUR,,,,,,2026-06-02,,,,,,,,,,
            """),
        ("sellers.csv", """
            seller,name,country,currency,shipping_fixed,shipping_per_item,free_from,import_charge,days_min,days_max,returns_days,restocking,note
            millrace,Millrace Breakers,GB,GBP,9.50,1.20,120.00,4.5,3,6,14,15,
            """));

    public BookFiles Files => new(
    [
        .. _files.Select(file => new BookFile(file.Key, Encoding.UTF8.GetBytes(file.Value))),
        .. _files.ContainsKey("photos.csv") ? [new BookFile(ImageName.Of(Picture), Picture.Bytes)] : Array.Empty<BookFile>(),
    ]);

    public string this[string file] => _files[file];

    /// <summary>A line at the end of a file.</summary>
    public SampleBook Add(string file, string line)
    {
        _files[file] += line + "\n";
        return this;
    }

    /// <summary>The one place where a text stands, exchanged.</summary>
    public SampleBook Change(string file, string found, string instead)
    {
        var first = _files[file].IndexOf(found, StringComparison.Ordinal);
        if (first < 0 || _files[file].IndexOf(found, first + 1, StringComparison.Ordinal) >= 0)
        {
            throw new ArgumentException($"'{found}' does not stand exactly once in {file}", nameof(found));
        }

        _files[file] = _files[file].Replace(found, instead, StringComparison.Ordinal);
        return this;
    }

    public SampleBook Write(string file, string text)
    {
        _files[file] = text;
        return this;
    }

    public SampleBook Remove(string file)
    {
        _files.Remove(file);
        return this;
    }
}
