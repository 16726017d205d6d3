package typeset

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"

	"noonbook/theme"
)

// explanations reads what the language says for the explanations of keys, facts
// and placeholders, by their English: English stands in the code, because the
// terminal speaks it, and a changed sentence must not keep an old translation.
func explanations(code string) (map[string]string, error) {
	src, err := fs.ReadFile(theme.Files(), "explanations/"+code+".toml")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil // English, the language of the code
	}
	if err != nil {
		return nil, fmt.Errorf("explanations of language %q: %w", code, err)
	}
	lines, err := readTexts(string(src))
	if err != nil {
		return nil, fmt.Errorf("explanations of language %q: %w", code, err)
	}
	return lines, nil
}

// Explain returns an explanation of a key, a fact or a placeholder in the
// language. One that is not there stays English.
func (w *Words) Explain(english string) string {
	if s, ok := w.explained[english]; ok {
		return w.typesetWords(s)
	}
	return w.typesetWords(english)
}

// Explained returns the English of every explanation that the language has,
// sorted; none for English.
func (w *Words) Explained() []string { return slices.Sorted(maps.Keys(w.explained)) }
