package classroom

import (
	"slices"
	"testing"
)

// Copies of the papers of one lesson, by hand, for 27 pupils in nine groups: a gnomon for
// each group and one spare, of which a sheet holds three, so that ten take four sheets, three faces and one more for each pupil, a sheet for each
// pupil, a card for two groups. What is printed from no paper of the lesson is none.
func TestPapers(t *testing.T) {
	l := Lesson{
		Prints:  []string{"dial-blank", "dial-gnomon", "dial-face", BuildCard},
		OnSheet: map[string]int{"dial-gnomon": 3},
		Kit: []Thing{
			{Item: "pencils", Count: 1, Share: PerPupil},
			{Item: "gnomon sheets", Count: 1, Share: PerGroup, Spare: 1, Print: "dial-gnomon"},
			{Item: "faces to check", Count: 3, Print: "dial-face"},
			{Item: "sheets", Count: 1, Share: PerPupil, Print: PupilSheet},
			{Item: "faces to keep", Count: 1, Share: PerPupil, Print: "dial-face"},
			{Item: "build cards", Count: 1, Share: PerGroup, Shared: 2, Print: BuildCard},
			{Item: "stars", Count: 5, Print: "sky-map"},
		},
	}
	want := []Papers{
		{"dial-gnomon", "gnomon sheets", 4, 3, false}, {"dial-face", "faces to check", 3, 1, true}, {PupilSheet, "sheets", 27, 1, false},
		{"dial-face", "faces to keep", 27, 1, true}, {BuildCard, "build cards", 5, 1, false}, {"dial-blank", "", 0, 1, false},
	}
	if got := l.Papers(27, Groups(27, 3)); !slices.Equal(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	for _, p := range want {
		if p.TrueSize() != (p.Print != "pupil-sheet" && p.Print != "card") || p.Counted() != (p.Print != "dial-blank") {
			t.Errorf("%s: true size %v, counted %v", p.Print, p.TrueSize(), p.Counted())
		}
	}
}
