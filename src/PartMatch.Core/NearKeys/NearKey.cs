namespace PartMatch.Core.NearKeys;

/// <summary>A key found near another.</summary>
/// <param name="Place">Its place among the keys that the index was made of.</param>
/// <param name="Edits">Optimal string alignment distance; within the limit.</param>
internal readonly record struct NearKey(int Place, int Edits);
