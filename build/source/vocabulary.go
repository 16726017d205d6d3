package source

import (
	"slices"
	"strings"
)

// otherNames reports names of a word that lead nobody to it.
func (r *reader) otherNames(l *Lesson) {
	for i, row := range BlockVocabulary.Of(l.Block) {
		given := []string{strings.ToLower(VocabularyTerm.Of(row))}
		for j, name := range VocabularyAlso.Of(row) {
			folded := strings.ToLower(strings.TrimSpace(name))
			switch {
			case folded == "":
				r.problems.Add(l.RowPlace(BlockVocabulary, i, VocabularyAlso, j), "lesson: vocabulary: also holds an empty name")
			case slices.Contains(given, folded):
				r.problems.Add(l.RowPlace(BlockVocabulary, i, VocabularyAlso, j), "lesson: vocabulary: also holds %q, which is already a name of this word", name)
			}
			given = append(given, folded)
		}
	}
}
