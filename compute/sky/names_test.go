package sky

import (
	"strings"
	"testing"
	"unicode"

	"noonbook/compute/space"
)

// listed is a star of the list that d3-celestial carries (testdata/reference/README.md).
type listed struct {
	name, letter, number, constellation string
	place                               space.Vector
}

func listedStars(t *testing.T) []listed {
	t.Helper()
	var list []listed
	for _, row := range reference(t, "star-names.csv") {
		list = append(list, listed{row["name"], row["bayer"], row["flamsteed"], row["constellation"],
			direction(number(t, row["ra_deg"]), number(t, row["dec_deg"]))})
	}
	return list
}

// withoutNumber drops the number of a letter, which catalogues give to one star of a
// pair or to none: "γ¹", "γ1" and "γ" are one.
func withoutNumber(letter string) string { return strings.TrimRightFunc(letter, unicode.IsNumber) }

// Within 0.1° of a star of ours the list has one of the same name.
//
// No package that we know of carries the IAU Catalog of Star Names itself. This list
// has its names beside older ones, so it tells a name on the wrong star, not whether
// the IAU approved it; for that testdata/stars/stars.py names the catalogue of 2018.
func TestNamesStandOnTheirStars(t *testing.T) {
	spelled := map[string]string{
		"Schedar": "Shedar", // the IAU approved Schedar; the list keeps an older spelling
	}
	list, named := listedStars(t), 0
	for _, star := range Stars() {
		if star.Name == "" {
			continue
		}
		named++
		want := star.Name
		if other, ok := spelled[want]; ok {
			want = other
		}
		found := false
		for _, l := range list {
			found = found || l.name == want && apart(l.place, star.place) < 360
		}
		if !found {
			t.Errorf("%s (%s): no %s within 0.1° in the list", star.Name, star.Designation, want)
		}
	}
	if named < 90 || len(list) < 1000 {
		t.Errorf("%d names, %d stars of the list: too few to tell", named, len(list))
	}
}

// Within 0.1° of a star of ours the list has one of the same Bayer letter or Flamsteed
// number and constellation; so a figure, which is drawn by designations, goes through
// the stars that it says.
func TestDesignationsStandOnTheirStars(t *testing.T) {
	// Stars that the list does not have so, and why.
	excused := map[string]string{
		"η Ori":  "the list leaves it out",
		"ξ Sco":  "the list has the star without a letter",
		"υ³ Eri": `the list prints "undefined" for its letter`,
		"k Pup":  "the list takes the Latin letter for a kappa",
	}
	list := listedStars(t)
	for _, star := range Stars() {
		letter, constellation, _ := strings.Cut(star.Designation, " ")
		found := false
		for _, l := range list {
			same := l.letter != "" && withoutNumber(l.letter) == withoutNumber(letter) || l.number == letter
			found = found || same && l.constellation == constellation && apart(l.place, star.place) < 360
		}
		switch why, ok := excused[star.Designation]; {
		case !found && !ok:
			t.Errorf("%s: none within 0.1° in the list", star.Designation)
		case found && ok:
			t.Errorf("%s is in the list after all, though %s", star.Designation, why)
		}
	}
}
