using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

/// <summary>One fault in an otherwise sound book gives exactly one error that says where, what and how to mend it, and stores nothing.</summary>
public sealed class ImportFaultTests
{
    [Theory]
    // single cells
    [InlineData("parts.csv", "marl:S-100,shaft", "marl:S-100,Shaft", 6, "kind", "a code of a-z", "shaft")]
    [InlineData("values.csv", "0.010,mm", "0.010,milli", 2, "unit", "unit of the unit table", null)]
    [InlineData("values.csv", "2.047,,,in", "2.047,,,inch", 6, "unit", "unit of the unit table", "in")]
    [InlineData("values.csv", "25.400", "\"25,400\"", 2, "value", "plain number", "25.400")]
    [InlineData("values.csv", "25.400", "25.4e0", 2, "value", "plain number", null)]
    [InlineData("values.csv", "25.400", "+25.4", 2, "value", "plain number", "25.4")]
    [InlineData("values.csv", "25.400", "9999999999999", 2, "value", "plain number", null)]
    [InlineData("values.csv", "0.005,0.010", "-0.005,0.010", 2, "minus", "zero or more", null)]
    [InlineData("variants.csv", "2015-03", "2015-3", 2, "built_from", "YYYY-MM", null)]
    [InlineData("variants.csv", "2015-03", "2015-13", 2, "built_from", "YYYY-MM", null)]
    [InlineData("variants.csv", "2018-11-30", "2018-11-31", 2, "built_to", "YYYY-MM", null)]
    [InlineData("variants.csv", "100,41206", "1e2,41206", 2, "serial_from", "whole number", null)]
    [InlineData("variants.csv", "100,41206", "100.0,41206", 2, "serial_from", "whole number", null)]
    [InlineData("variants.csv", "LA pump set", "", 2, "name", "empty", null)]
    [InlineData("positions.csv", "injector,injector\n", "injector,inyector\n", 3, "role", "one of", "injector")]
    [InlineData("evidence.csv", "ev-0002,measured,", "ev-0002,mesured,", 3, "grade", "one of", "measured")]
    [InlineData("joints.csv", "la|lb", "la|la", 2, "variants", "twice", "la")]
    [InlineData("joints.csv", "la|lb", "la| lb", 2, "variants", "code", "la|lb")]
    [InlineData("parts.csv", "marl:I-1,injector", "marl:-/-,injector", 5, "part", "maker:number", null, 7)]
    [InlineData("supersessions.csv", ",one,", ",once,", 2, "way", "one of", "one")]
    [InlineData("torques.csv", "front-bush,2,,,,,90", "front-bush,10,,,,,90", 3, "pass", "1 to 9", null)]
    [InlineData("torques.csv", "front-bush,2,,,,,90", "front-bush,3,,,,,90", 3, "pass", "expected 2", "number the passes of one source 1, 2, 3 without a gap")]
    [InlineData("torques.csv", ",,deg,", ",,mm,", 3, "unit", "a torque or an angle", "N·m")]
    [InlineData("torques.csv", "1,,,,,20,2,2", "1,,,,,0,,", 2, "value", "more than 0", "leave the row out where nothing is recorded")]
    [InlineData("torques.csv", "1,,,,,20,2,2", "1,,,,,20,20.1,2", 2, "minus", "at most that", null)]
    [InlineData("torques.csv", "1,,,,,15.5", "1,,,300,200,15.5", 4, "serial_to", "less than serial_from, which is 300", "exchange the two")]
    [InlineData("torques.csv", "1,,,,,15.5", "1,2019-13,,,,15.5", 4, "built_from", "YYYY-MM", null)]
    [InlineData("torques.csv", "2,,,,,90", "2,,,200,,90", 3, "pass", "expected 1", "number the passes of one source 1, 2, 3 without a gap")]
    [InlineData("torques.csv", "deg,,,,", "deg,dry,,,", 3, "lubrication", "pass 1 says oiled", "leave the cell empty, or correct the other pass")]
    [InlineData("torques.csv", "deg,,,,", "deg,,,no,", 3, "single_use", "pass 1 says stretch", "leave the cell empty, or correct the other pass")]
    [InlineData("torques.csv", "oiled,crosswise", "wet,crosswise", 2, "lubrication", "one of: dry, oiled", null)]
    [InlineData("torques.csv", ",,,,ev-0003,", ",,,,,", 4, "evidence", "empty", null)]
    // references
    [InlineData("openings.csv", "front-bush,main-shaft,la", "front-bush,main-shaft,lz", 3, "variants", "no variant 'lz'", "la")]
    [InlineData("openings.csv", "main-shaft,injector", "main-shaft,main-shaft", 4, "off_first", "no order in which la comes apart: main-shaft before main-shaft", "take one of these rows out")]
    [InlineData("openings.csv", "main-shaft,injector", "main-shaft,front-bush", 4, "off_first", "no order in which la comes apart: front-bush before main-shaft before front-bush", "take one of these rows out")]
    [InlineData("bench-order.csv", "main-shaft,injector,into", "injector,front-bush,into", 4, "then", "no order in which la comes apart: front-bush before injector before front-bush", "take one of these rows out")]
    [InlineData("bench-order.csv", "main-shaft,injector,into", "main-shaft,injektor,into", 4, "then", "no position 'injektor'", "injector")]
    [InlineData("bench-order.csv", "injector,into", "injector,onto", 4, "how", "one of: into, on-bench", "into")]
    [InlineData("renewals.csv", "12.5,mL", "12.5,mm", 3, "unit", "a volume or a mass", "mL")]
    [InlineData("renewals.csv", "12.5,mL", "12.5,", 3, "unit", "amount is 12.5", null)]
    [InlineData("renewals.csv", "12.5,mL", ",mL", 3, "amount", "unit is mL", null)]
    [InlineData("renewals.csv", "12.5,mL", "0,mL", 3, "amount", "more than 0", "leave it empty where it is not recorded")]
    [InlineData("weak-points.csv", "marl:B-1/3,ream-bush", ",", 2, "remedy_part", "what mends it", "name a part of parts.csv or a work of works.csv")]
    [InlineData("weak-points.csv", "marl:B-1/3,ream", "marl:S-100,ream", 2, "remedy_part", "of kind shaft: expected a part of kind bush", null)]
    [InlineData("weak-points.csv", "2015-03,,,20000", "2015-03,2014-01,,20000", 2, "built_to", "before built_from", "exchange the two")]
    [InlineData("torques.csv", "la,front-bush,2", "lz,front-bush,2", 3, "variant", "no variant 'lz'", "la", 2)]
    [InlineData("parts.csv", "marl:S-100,shaft", "marl:S-100,shaff", 6, "kind", "no kind 'shaff'", "shaft")]
    [InlineData("parts.csv", "marl:I-1,injector,Injector,,ev-0002", "marl:I-1,injector,Injector,,ev-0007", 5, "evidence", "no evidence 'ev-0007'", "ev-0001")]
    [InlineData("fitments.csv", "la,injector,marl:I-1", "la,injector,marl:I-2", 4, "part", "no part 'marl:I-2'", "marl:I-1")]
    [InlineData("fitments.csv", "la,injector,marl:I-1", "lc,injector,marl:I-1", 4, "variant", "no variant 'lc'", "la")]
    [InlineData("fitments.csv", "la,injector,marl:I-1", "la,injektor,marl:I-1", 4, "position", "no position 'injektor'", "injector")]
    [InlineData("numbers.csv", "orrin:S100", "orin:S100", 4, "number", "no maker 'orin'", "orrin:S100")]
    [InlineData("joints.csv", "ream-bush", "reem-bush", 2, "work", "no work 'reem-bush'", "ream-bush")]
    [InlineData("supersessions.csv", "orrin:B-77", "orrin:B-78", 2, "with", "no part 'orrin:B-78'", "orrin:B-77")]
    [InlineData("supersessions.csv", ",la,ev-0003", ",la|lx,ev-0003", 2, "variants", "no variant 'lx'", "la")]
    [InlineData("values.csv", "marl:S-100,nose", "marl:S-100,nos", 7, "feature", "kind shaft has no feature 'nos'", "nose")]
    [InlineData("curves.csv", "dead-time,12.0", "death-time,12.0", 2, "curve", "no feature 'death-time'", "dead-time")]
    [InlineData("needs.csv", "injector,fuel", "injector,feul", 3, "feature", "no feature 'feul'", "fuel")]
    [InlineData("joints.csv", "main-shaft,outer", "main-shaft,bore", 2, "left_feature", "kind shaft has no feature 'bore'", null)]
    [InlineData("stacks.csv", "-main-shaft.outer", "-main-shaft.bore", 2, "terms", "has no feature 'bore'", null)]
    [InlineData("stacks.csv", "-main-shaft.outer", "-mane-shaft.outer", 2, "terms", "no position 'mane-shaft'", "main-shaft")]
    [InlineData("companions.csv", "front-bush,bore", "front-bush,bored", 2, "then_feature", "no feature 'bored'", "bore")]
    [InlineData("selects.csv", "main-shaft,outer", "main-shaft,outr", 2, "measure_feature", "no feature 'outr'", "outer")]
    [InlineData("book.csv", ",shared,", ",sharred,", 2, "uses", "no book 'sharred' in the base", "shared")]
    [InlineData("book.csv", ",shared,", ",lark-2|shared,", 2, "uses", "uses itself", "take it out of the list")]
    [InlineData("book.csv", ",marl,", ",,", 2, "maker", "who made the engine", null)]
    // values against their features
    [InlineData("values.csv", "grooves,2", "grooves,2.5", 4, "value", "whole number", null)]
    [InlineData("values.csv", "grooves,2,,,,", "grooves,2,,,mm,", 4, "unit", "is a count", "leave the cell empty")]
    [InlineData("values.csv", "grooves,2,,,,", "grooves,2,,,,1", 4, "uncertainty", "is a count", "leave the cell empty")]
    [InlineData("values.csv", "nose,tang", "nose,tank", 7, "value", "one of: plain, tang", "tang")]
    [InlineData("values.csv", "nose,tang", "nose,plain|tang", 7, "value", "one of: plain, tang", null)]
    [InlineData("values.csv", "bronze|tin", "bronze|tinn", 5, "value", "one of: bronze, polymer, tin", "bronze|tin")]
    [InlineData("values.csv", "25.41,,,mm", "25.41,,,kg", 3, "unit", "is a length", "mm")]
    [InlineData("values.csv", "25.41,,,mm", "25.41,,,", 3, "unit", "unit is missing", "mm")]
    [InlineData("values.csv", "marl:S-100,nose,tang", "marl:I-1,dead-time,1", 7, "value", "is a curve", "its points go to curves.csv")]
    [InlineData("values.csv", "marl:S-100,nose,tang", "marl:S-100,present,yes", 7, "feature", "known from the fitments", "leave the row out")]
    [InlineData("curves.csv", "dead-time,12.0,V,3.0,bar,1.10,ms", "length,12.0,V,3.0,bar,1.10,mm", 2, "curve", "expected a curve", "single values go to values.csv")]
    [InlineData("curves.csv", "1.10,ms", "1.10,mm", 2, "unit", "is a time", "ms")]
    [InlineData("curves.csv", "14.0,V", "14.0,bar", 3, "x_unit", "same dimension", "V")]
    [InlineData("engine.csv", "bore,85.00,0.00,0.02,mm", "bore,85.00,0.00,0.02,kg", 2, "unit", "is a length", null)]
    [InlineData("engine.csv", "cylinders,2", "cylinders,two", 3, "value", "whole number", null)]
    [InlineData("engine.csv", "cylinders,2", "cylinders,2.5", 3, "unit", "needs a unit", "1 for a plain ratio")]
    [InlineData("engine.csv", "port-injected", "port-injection", 4, "value", "one of", "port-injected")]
    // spans and pieces
    [InlineData("variants.csv", "2018-11-30", "2015-02", 2, "built_to", "before built_from", "exchange the two")]
    [InlineData("variants.csv", "100,41206", "41207,41206", 2, "serial_to", "less than serial_from", "exchange the two")]
    [InlineData("fitments.csv", "none,,,,,,0", "none,,,,,,1", 5, "quantity", "nothing is fitted", "0")]
    [InlineData("fitments.csv", ",2,\n", ",0,\n", 4, "quantity", "1 or more", "to say that nothing is fitted, write the part as none")]
    [InlineData("fitments.csv", "la,injector,marl:I-1", "la,injector,marl:S-100", 4, "part", "the part is of kind shaft, the position holds kind injector", null)]
    [InlineData("contents.csv", "B-1/2,2,yes", "B-1/2,0,yes", 2, "quantity", "1 or more", null)]
    [InlineData("supersessions.csv", "one,1,", "one,,", 2, "quantity", "empty", null)]
    // relations
    [InlineData("needs.csv", "stops,one-of,e85|petrol", "stops,at-least,e85|petrol", 3, "relation", "is a choice, expected same or one-of", null)]
    [InlineData("needs.csv", "present,stops,same,yes", "present,stops,same,maybe", 4, "value", "one of: no, yes", null)]
    [InlineData("needs.csv", "bore,work,at-most", "grooves,work,at-most", 2, "effect", "no rule of the kind bush names a work for 'grooves'", "add the rule with its work to rules.csv, or use another effect", 5)]
    [InlineData("joints.csv", "band,front-bush,bore", "same,front-bush,bore", 2, "relation", "cannot be compared so", "band for two quantities or counts; same for two counts, choices or sets; one-of for a choice in a set; covers for a set that holds a choice or a set")]
    [InlineData("joints.csv", "band,front-bush,bore", "band,injector,dead-time", 2, "relation", "cannot be compared so", "band for two quantities or counts; same for two counts, choices or sets; one-of for a choice in a set; covers for a set that holds a choice or a set")]
    [InlineData("joints.csv", "0.005,,mm", ",,mm", 2, "min", "both empty", null)]
    [InlineData("joints.csv", "0.005,,mm", "0.005,0.004,mm", 2, "max", "less than min", "exchange the two")]
    [InlineData("joints.csv", "0.005,,mm", "0.005,,", 2, "unit", "unit is missing", "mm")]
    [InlineData("joints.csv", "0.005,,mm", "0.005,,kg", 2, "unit", "is a length", "mm")]
    [InlineData("joints.csv", "work,ream-bush", "stops,ream-bush", 2, "work", "the effect is stops", "make the effect work, or leave the cell empty")]
    [InlineData("joints.csv", "work,ream-bush", "work,", 2, "work", "empty, but the effect is work", null)]
    [InlineData("stacks.csv", "+1.5", "1.5", 2, "terms", "signed terms", "+34.0|-intake-camshaft.lift")]
    [InlineData("stacks.csv", "-main-shaft.outer", "-main-shaft.lobes", 2, "terms", "is a count, expected a quantity", null)]
    [InlineData("stacks.csv", "+front-bush.bore|", "+front-bush.grooves|", 2, "terms", "is a count, expected a quantity", null)]
    [InlineData("stacks.csv", "+front-bush.bore|-main-shaft.outer|+1.5", "+1.5", 2, "terms", "no term names a feature", null)]
    [InlineData("selects.csv", "24.980,24.990", "24.990,24.980", 2, "to", "less than from", "exchange the two")]
    [InlineData("selects.csv", "main-shaft,outer", "main-shaft,lobes", 2, "measure_feature", "expected a quantity", null)]
    [InlineData("selects.csv", "marl:B-1/2", "marl:I-1", 2, "part", "the part is of kind injector", null)]
    [InlineData("companions.csv", "present,same,yes", "present,same,1", 3, "then_value", "one of: no, yes", null)]
    [InlineData("companions.csv", "at-least,25.3,mm", "at-least,25.3,", 2, "then_unit", "unit is missing", "mm")]
    [InlineData("companions.csv", "nose,same,tang,,", "nose,same,tang,mm,", 2, "when_unit", "is a choice", "leave the cell empty")]
    [InlineData("companions.csv", "bore,at-least,", "bore,covers,", 2, "then_relation", "is a quantity", null)]
    // pairs and access
    [InlineData("pairs.csv", "B-77,trap", "B-77,trapp", 2, "judgement", "one of: same-part, trap, harmless", "trap")]
    [InlineData("pairs.csv", "B-77,trap", "B-77,", 2, "judgement", "empty", null)]
    [InlineData("pairs.csv", "marl:B-1/2,orrin:B-77", "marl:B-1/2,orrin:B-78", 2, "part_b", "no part 'orrin:B-78' in this book or shared", "orrin:B-77")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "marl:S-10,marl:B-1/2", 3, "part_a", "no part 'marl:S-10' in this book or shared", "marl:S-100")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "none,marl:B-1/2", 3, "part_a", "maker:number", null)]
    [InlineData("pairs.csv", "trap,ev-0001", "trap,ev-0007", 2, "evidence", "no evidence 'ev-0007'", "ev-0001")]
    [InlineData("pairs.csv", "marl:B-1/2,orrin:B-77", "marl:B-1/2,marl:b 12", 2, "part_b", "the same part as part_a", "leave the row out, or name the other part")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "orrin:B-77,marl:B-1/2", 3, "part_a", "the same two parts already stand in line 2 as marl:B-1/2,orrin:B-77", "leave one of the two rows out")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "orrin:b.77,marl:b12", 3, "part_a", "already stand in line 2 as marl:B-1/2,orrin:B-77: their order does not count", "leave one of the two rows out")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "marl:B12,orrin:B-77", 3, "part_a", "the same two parts already stand in line 2 as marl:B-1/2,orrin:B-77", "leave one of the two rows out")]
    [InlineData("pairs.csv", "marl:S-100,marl:B-1/2", "marl:B-1/2,orrin:B-77", 3, "part_a", "the key marl:B-1/2,orrin:B-77 (part_a, part_b) already stands in line 2", "leave one row out, or correct the key")]
    [InlineData("access.csv", "front-bush,95.5", "front-busch,95.5", 2, "position", "no position 'front-busch' in this book", "front-bush")]
    [InlineData("access.csv", "front-bush,95.5", "front-bush,", 2, "minutes", "empty", null)]
    [InlineData("access.csv", "front-bush,95.5", "front-bush,-1", 2, "minutes", "zero or more", null)]
    [InlineData("access.csv", "front-bush,95.5", "front-bush,an hour", 2, "minutes", "zero or more", null)]
    [InlineData("access.csv", "injector,0", "front-bush,0", 3, "position", "already stands in line 2", "leave one row out, or correct the key")]
    // evidence
    [InlineData("evidence.csv", "bench sheet 17,,,", "bench sheet 17,ev-0003,,", 3, "derived_from", "loop", "leave the cell of the original empty", 2)]
    [InlineData("evidence.csv", "2026-04-01,wrong part", ",wrong part", 4, "retracted_on", "expected a date", null)]
    // keys
    [InlineData("variants.csv", "lb,LB cart", "la,LB cart", 3, "variant", "already stands in line 2", "leave one row out, or correct the key", 8)]
    [InlineData("parts.csv", "marl:B-1/3,bush", "marl:B.1-2,bush", 4, "part", "the same number of the same maker stands in line 2 as marl:B-1/2", "leave one row out", 6)]
    public void Fault_of_a_family_book_is_named(string file, string sound, string fault, int line, string column, string reason, string? suggestion, int total = 1)
    {
        var refused = Refused(SampleBook.Family().Change(file, sound, fault));
        CheckOne(refused, file, line, column, reason, suggestion, total);
    }

    [Theory]
    [InlineData("features.csv", "length,length,quantity,mm,", "length,length,quantity,,", 7, "unit", "a quantity has a unit", "1 for a plain ratio")]
    [InlineData("features.csv", "grooves,count,,", "grooves,count,mm,", 3, "unit", "a count has no unit", "leave the cell empty")]
    [InlineData("features.csv", "nose,choice,,plain|tang", "nose,choice,,", 9, "choices", "allowed values", "no|yes")]
    [InlineData("features.csv", "lobes,count,,", "lobes,count,,one|two", 8, "choices", "a count has no choices", "leave the cell empty")]
    [InlineData("features.csv", "shaft,lobes,lobes", "shaft,present,lobes", 8, "feature", "built in", "leave the row out")]
    [InlineData("features.csv", "shaft,lobes,lobes,count", "shaft,lobes,lobes,counts", 8, "type", "one of", "count")]
    [InlineData("kinds.csv", "fuel-pressure|hot-parts", "fuel-pressure|hot-part", 3, "cautions", "one of", "fuel-pressure|hot-parts")]
    [InlineData("kinds.csv", "cannot-alter,yes", "cannot-alter,true", 2, "reviewed", "one of: no, yes", null)]
    [InlineData("kinds.csv", "injector,Injector", "bush,Injector", 3, "kind", "already stands in line 2", "leave one row out, or correct the key", 5)]
    [InlineData("rules.csv", "same,0.01,mm", "same,,mm", 2, "allowance", "how far off is still accepted", "0 where nothing is")]
    [InlineData("rules.csv", "same,0.01,mm", "same,0.01,", 2, "unit", "unit is missing", "mm")]
    [InlineData("rules.csv", "same,0.01,mm", "same,0.01,deg", 2, "unit", "is a length", "mm")]
    [InlineData("rules.csv", "bush,lining,alters,covers", "injector,dead-time,alters,same", 4, "relation", "is a curve", null)]
    [InlineData("rules.csv", "lining,alters,covers", "lining,alters,one-of", 4, "relation", "is a choices, expected covers or same", null)]
    [InlineData("rules.csv", "nose,stops,same,,", "nose,stops,same,0,", 5, "allowance", "is a choice", "leave the cell empty")]
    [InlineData("rules.csv", "ream-bush,loss", ",loss", 3, "work", "the effect is work", null)]
    [InlineData("rules.csv", ",,,nuisance", ",,ream-bush,nuisance", 4, "work", "the effect is alters", "make the effect work, or leave the cell empty")]
    [InlineData("rules.csv", "shaft,nose,stops", "shaft,knows,stops", 5, "feature", "no feature 'knows'", null)]
    [InlineData("checks.csv", "photo,1,,", "photo,1,0.1,", 3, "uncertainty", "is a choice", "leave the cell empty")]
    [InlineData("checks.csv", "gauge,4,0.002,mm", "gauge,4,0.002,", 2, "unit", "unit is missing", "mm")]
    [InlineData("checks.csv", "gauge,4", "gauge,", 2, "minutes", "empty", null)]
    [InlineData("shots.csv", "shaft,whole", "shaff,whole", 3, "kind", "no kind 'shaff'", "shaft")]
    [InlineData("shots.csv", "shaft,whole", "shaft,Whole", 3, "shot", "a code of a-z", "whole")]
    [InlineData("shots.csv", "shaft,whole", "shaft,mark", 3, "kind", "already stands in line 2", "leave one row out, or correct the key")]
    [InlineData("shots.csv", "stamped mark", "", 2, "name", "empty", null)]
    [InlineData("shots.csv", "nose|outer", "nose|outr", 3, "shows", "the kind shaft has no feature 'outr'", "outer")]
    [InlineData("shots.csv", "nose|outer", "nose|nose", 3, "shows", "twice", "nose")]
    [InlineData("shots.csv", "nose|outer", "lobes|nose", 3, "shows", "'lobes' of the kind shaft has neither a photo nor a label check", "take it out of the list, or add such a check to checks.csv")]
    [InlineData("shots.csv", "nose|outer", "nose|present", 3, "shows", "'present' of the kind shaft has neither", "take it out of the list, or add such a check to checks.csv")]
    [InlineData("shots.csv", "shaft,mark,stamped mark,", "bush,mark,stamped mark,bore", 2, "shows", "'bore' of the kind bush has neither", "take it out of the list, or add such a check to checks.csv")]
    [InlineData("works.csv", "40.00,EUR", "40.005,EUR", 2, "price", "EUR has 2 decimal digits", null)]
    [InlineData("works.csv", "40.00,EUR", "40.5,JPY", 2, "price", "JPY has 0 decimal digits", null)]
    [InlineData("works.csv", "40.00,EUR", "40.00,eur", 2, "currency", "ISO 4217", "EUR")]
    [InlineData("works.csv", "40.00,EUR", "40.00,", 2, "currency", "go together", null)]
    [InlineData("works.csv", "bush|shaft", "bush|shafts", 2, "needs_first", "'shafts' is no kind, position or work", "shaft")]
    [InlineData("works.csv", "bush|shaft", "bush|ream-bush|shaft", 2, "needs_first", "no order in which these works are done: ream-bush after ream-bush", "take one of them out of needs_first")]
    [InlineData("reminders.csv", "worked,ream-bush", "start,ream-bush", 2, "works", "at is start", "take the works out, or write worked in at")]
    [InlineData("reminders.csv", "worked,ream-bush", "worked,ream-bash", 2, "works", "no work 'ream-bash'", "ream-bush")]
    [InlineData("reminders.csv", "bush,ream", "bosh,ream", 2, "kind", "no kind 'bosh'", "bush")]
    [InlineData("works.csv", "bush.bore", "bush.bor", 2, "changes", "no feature 'bor'", "bore")]
    [InlineData("works.csv", "bush.bore", "bosh.bore", 2, "changes", "'bosh' is no kind", "bush")]
    [InlineData("works.csv", "bush.bore", "bush", 2, "changes", "kind.feature", null)]
    [InlineData("works.csv", "no,tightening", "perhaps,tightening", 2, "undo", "one of: no, yes", null)]
    [InlineData("book.csv", ",common,", ",comon,", 2, "kind", "one of: common, family", "common", 2)]
    [InlineData("book.csv", "1,shared", "1,Shared", 2, "book", "a code", "shared")]
    public void Fault_of_a_common_book_is_named(string file, string sound, string fault, int line, string column, string reason, string? suggestion, int total = 1)
    {
        using var temp = new TempBase();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Common().Change(file, sound, fault).Files));
        CheckOne(refused, file, line, column, reason, suggestion, total);
        Assert.Empty(temp.Books.List());
    }

    [Theory]
    [InlineData("variants.csv", "variant,name,built_from,built_to,serial_from,serial_to,evidence\nva,VA,,,,,\n")]
    [InlineData("positions.csv", "position,name,group,kind,role\nfront-bush,Front bush,bottom-end,bush,\n")]
    [InlineData("selects.csv", "position,measure_position,measure_feature,from,to,unit,part,evidence\n")]
    public void Common_book_may_not_describe_an_engine(string file, string text)
    {
        using var temp = new TempBase();
        var outcome = temp.Import(SampleBook.Common().Write(file, text).Files);
        if (text.Count(letter => letter == '\n') == 1)
        {
            Assert.IsType<ImportOutcome.Imported>(outcome);
            return;
        }

        var error = Assert.Single(Assert.IsType<ImportOutcome.Refused>(outcome).Errors);
        Assert.Equal((file, 2, "move the file to the family's book"), (error.File, error.Line, error.Suggestion));
    }

    private static void CheckOne(ImportOutcome.Refused refused, string file, int line, string column, string reason, string? suggestion, int total)
    {
        var error = Assert.Single(refused.Errors, error => error.File == file && error.Line == line && error.Column == column);
        Assert.Contains(reason, error.Reason, StringComparison.Ordinal);
        Assert.Equal(suggestion, error.Suggestion);

        // What refers to a spoiled declaration is at fault too: such cases say how many errors there are in all.
        Assert.True(refused.Total == total, string.Join('\n', refused.Errors));
    }

    private static ImportOutcome.Refused Refused(SampleBook family)
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(family.Files));
        Assert.Null(temp.Books.Export("lark-2"));
        return refused;
    }
}
