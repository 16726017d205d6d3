package source_test

import (
	"strings"
	"testing"

	"noonbook/build/source"
)

// A word may have other names, each once and none of them the word itself.
func TestOtherNamesOfAWord(t *testing.T) {
	for names, want := range map[string]string{
		`["pointer", "shadow stick"]`: "",
		`["pointer", " Pointer"]`:     `u/a.md:6:20: lesson: vocabulary: also holds " Pointer", which is already a name of this word`,
		`["GNOMON"]`:                  `u/a.md:6:9: lesson: vocabulary: also holds "GNOMON", which is already a name of this word`,
		`[" "]`:                       "u/a.md:6:9: lesson: vocabulary: also holds an empty name",
		`["{sun-day.noon}"]`:          "lesson: vocabulary holds a placeholder",
		`"pointer"`:                   `u/a.md:6:8: lesson: also is "pointer", want a list of texts`,
	} {
		unit, problems := unitOf(t, map[string]string{"a.md": "```lesson\ntitle = \"A\"\n[[vocabulary]]\nterm = \"gnomon\"\nmeaning = \"m\"\nalso = " + names + "\n```\n"})
		switch {
		case want == "" && len(problems) > 0:
			t.Errorf("%s: %v", names, problems)
		case want == "" && len(source.VocabularyAlso.Of(source.BlockVocabulary.Of(unit.Lessons[0].Block)[0])) != 2:
			t.Errorf("%s: the names are lost", names)
		case want != "" && (len(problems) != 1 || !strings.Contains(problems[0].Error(), want)):
			t.Errorf("%s: got %v, want %s", names, problems, want)
		}
	}
}
