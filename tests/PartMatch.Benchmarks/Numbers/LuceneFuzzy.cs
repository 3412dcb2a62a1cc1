using Lucene.Net.Analysis.Core;
using Lucene.Net.Documents;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Store;
using Lucene.Net.Util;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>A fuzzy query of Lucene.Net with transpositions, rewritten to all terms it matches.</summary>
internal sealed class LuceneFuzzy : IDisposable
{
    private const string Field = "key";
    private readonly RAMDirectory _directory = new();
    private readonly DirectoryReader _reader;

    static LuceneFuzzy() => BooleanQuery.MaxClauseCount = int.MaxValue;

    public LuceneFuzzy(IEnumerable<string> keys)
    {
        using (var writer = new IndexWriter(_directory, new IndexWriterConfig(LuceneVersion.LUCENE_48, new KeywordAnalyzer())))
        {
            var field = new StringField(Field, "", Lucene.Net.Documents.Field.Store.NO);
            var document = new Document { field };
            foreach (var key in keys)
            {
                field.SetStringValue(key);
                writer.AddDocument(document);
            }

            writer.ForceMerge(1);
        }

        _reader = DirectoryReader.Open(_directory);
    }

    /// <summary>How many keys are near, by the query as one would ask it.</summary>
    public int Rewritten(string asked, int limit)
    {
        var query = new FuzzyQuery(new Term(Field, asked), limit, 0, int.MaxValue, transpositions: true)
        {
            MultiTermRewriteMethod = MultiTermQuery.SCORING_BOOLEAN_QUERY_REWRITE,
        };
        return ((BooleanQuery)query.Rewrite(_reader)).Clauses.Count;
    }

    /// <summary>The same by its enumeration of terms alone, no query made of them.</summary>
    public int Enumerated(string asked, int limit)
    {
        var (terms, count) = (MultiFields.GetTerms(_reader, Field), 0);
        var source = new FuzzyTermsEnum(terms, new AttributeSource(), new Term(Field, asked), limit, 0, transpositions: true);
        while (source.MoveNext())
        {
            count++;
        }

        return count;
    }

    public void Dispose()
    {
        _reader.Dispose();
        _directory.Dispose();
    }
}
