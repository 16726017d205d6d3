package form

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Nearest returns the word of the list that the author most likely meant, or
// "" when none is close: at most one slip in short words, two in longer ones
// (a missing, wrong, extra or swapped letter), or the same word but for case.
func Nearest(word string, words []string) string {
	best, fewest := "", 3
	word = strings.ToLower(word)
	length := utf8.RuneCountInString(word)
	for _, w := range slices.Sorted(slices.Values(words)) {
		low := strings.ToLower(w)
		if longer := utf8.RuneCountInString(low) - length; max(longer, -longer) >= fewest {
			continue // a slip makes a word longer or shorter by one letter at most
		}
		slips := distance(word, low)
		if slips < fewest && slips <= max(1, len(w)/3) {
			best, fewest = w, slips
		}
	}
	return best
}

// Choice says what may stand in the place of an unknown word: the nearest of
// the words, or all of them where none is near.
func Choice(word string, words []string) string {
	if hint := Meant(word, words); hint != "" {
		return hint
	}
	return "; want one of " + strings.Join(words, ", ")
}

// Meant returns "; did you mean \"w\"?" for the nearest word, or "".
func Meant(word string, words []string) string {
	if w := Nearest(word, words); w != "" {
		return `; did you mean "` + w + `"?`
	}
	return ""
}

// distance is the restricted edit distance of Damerau (Commun. ACM 7, 1964):
// insertions, deletions, substitutions and swaps of neighbours.
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	rows := [3][]int{make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)}
	for j := range rows[1] {
		rows[1][j] = j
	}
	for i := 1; i <= len(s); i++ {
		before, last, row := rows[0], rows[1], rows[2]
		row[0] = i
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		rows = [3][]int{last, row, before}
	}
	return rows[1][len(t)]
}
