package source_test

import (
	"slices"
	"testing"
)

// What an activity uses is looked for by its first words in the lesson's kit, whether a
// condition stands there or not.
func TestActivityAndKit(t *testing.T) {
	kit := "```lesson\ntitle = \"A\"\n[[kit]]\nitem = \"pairs of scissors\"\n[[kit]]\nitem = \"Glue sticks\"\nonly = \"place-facts.south\"\n[[kit]]\nitem = \"rulers, of wood\"\n" // 9 lines
	activity := kit + "[[activity]]\nwhat = \"cuts\"\neach = \"group\"\nseconds = 60\n"                                                                                            // 13 lines, so that uses is on line 14
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"by their first words", activity + "uses = [\"pairs of\", \"glue\", \"rulers, of wood\", \" Rulers\"]\n```\n", nil},
		{"by a word further on", activity + "uses = [\"pairs\",\n  \"scissors\"]\n```\n", []string{`u/a.md:15:3: lesson: activity: the kit lists no "scissors"; did you mean "pairs of scissors"?`}},
		{"misspelt", activity + "uses = [\"rulrs\", \"glue stick\", \"gleu sticks\"]\n```\n", []string{
			`u/a.md:14:9: lesson: activity: the kit lists no "rulrs"; did you mean "rulers"?`,
			`u/a.md:14:32: lesson: activity: the kit lists no "gleu sticks"; did you mean "Glue sticks"?`}},
		{"not there", activity + "uses = [\"hammers\", \"\"]\n```\n", []string{
			`u/a.md:14:9: lesson: activity: the kit lists no "hammers"; write the first words of an item of the kit`,
			`u/a.md:14:20: lesson: activity: the kit lists no ""; write the first words of an item of the kit`}},
		{"places shared by the class", kit + "[[activity]]\nwhat = \"cuts\"\neach = \"class\"\nseconds = 60\nshared_by = 2\n```\n", []string{
			`u/a.md:14:13: lesson: activity: shared_by goes with each = "group" or "pupil"; write places`}},
		{"keys that must be there", kit + "[[activity]]\nwhat = \"cuts\"\n```\n", []string{
			`u/a.md:10:1: lesson: each is missing: "pupil", "group" or "class"`,
			`u/a.md:10:1: lesson: seconds is missing: a whole number from 1 s to 36000 s`}},
	} {
		_, problems := unitOf(t, map[string]string{"a.md": c.text})
		var got []string
		for _, p := range problems {
			got = append(got, p.Error())
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got\n%q\nwant\n%q", c.name, got, c.want)
		}
	}
}
