package sun_test

import (
	"math"
	"slices"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// Height at noon is 90° less the difference of latitude and declination, 23.44° at
// the solstices; the air adds less than 0.1° above 6°. In June the Sun at noon is
// high in the north, in December in the south.
func TestSeasonModelNoons(t *testing.T) {
	for school, latitude := range map[string]float64{"alder reach": 46.09, "south": -45.87, "line north": 1.4, "half hour": 27.7} {
		r := reckon(t, school, "season-model", "2027-04-20")
		for name, declination := range map[string]float64{"march": 0, "june": 23.44, "september": 0, "december": -23.44} {
			want := 90 - math.Abs(latitude-declination)
			// The equinox moves by up to 0.4° in the day to the noon; the solstice stands still.
			tolerance := map[float64]float64{0: 0.45}[declination] + 0.1
			entrytest.Near(t, school+": noon in "+name, entrytest.Fact(t, r, name+"_noon").Number, want, tolerance)
		}
		june, december := entrytest.Fact(t, r, "june_day").Number, entrytest.Fact(t, r, "december_day").Number
		if (june > december) != (latitude > 0) {
			t.Errorf("%s: days of %v and %v s", school, june, december)
		}
	}
}

// Seasons go by the school's hemisphere, and polar days by its latitude.
func TestSeasonModelSeasons(t *testing.T) {
	for _, c := range []struct{ school, june, december, polar string }{
		{"alder reach", "season.summer", "season.winter", "season-model.no_polar"},
		{"south", "season.winter", "season.summer", "season-model.no_polar"},
		{"equator", "season.none", "season.none", "season-model.no_polar"},
		{"arctic", "season.summer", "season.winter", "season-model.polar_both"},
		{"north pole", "season.summer", "season.winter", "season-model.polar_both"},
		{"south pole", "season.winter", "season.summer", "season-model.polar_both"},
	} {
		r := reckon(t, c.school, "season-model", "2027-04-20")
		for name, want := range map[string]string{"june_season": c.june, "december_season": c.december, "polar": c.polar} {
			if got := entrytest.Fact(t, r, name).Phrase.Key; got != want {
				t.Errorf("%s: %s is %s, want %s", c.school, name, got, want)
			}
		}
	}
	// At 66° the air and the Sun's edge lift it over the horizon all night in June, and
	// over it for a while in December.
	if got := entrytest.Fact(t, reckon(t, "arctic", "season-model", "2027-04-20", "school.latitude=66"), "polar").Phrase.Key; got != "season-model.polar_day" {
		t.Errorf("at 66°: %s", got)
	}
}

// Overhead in Honolulu (21.3° N, 157.86° W): 26 May and about 16 July, Bishop Museum,
// from memory; a day either way with the leap years. Outside the tropics never; on the
// equator at the equinoxes; on the tropic itself about the solstice.
func TestSunOverhead(t *testing.T) {
	r := reckon(t, "alder reach", "season-model", "2027-04-20", "school.latitude=21.3", "school.longitude=-157.86", "school.time_zone=Pacific/Honolulu")
	if got := overheadDays(entrytest.Fact(t, r, "overhead")); len(got) != 2 || !slices.Contains([]int{525, 526, 527}, got[0]) || !slices.Contains([]int{715, 716, 717}, got[1]) {
		t.Errorf("Honolulu: %v", got)
	}
	if got := entrytest.Fact(t, reckon(t, "south", "season-model", "2027-04-20"), "overhead"); got.Kind != say.Nothing {
		t.Errorf("at 46° S: %v", got)
	}
	if got := overheadDays(entrytest.Fact(t, reckon(t, "equator", "season-model", "2027-04-20"), "overhead")); len(got) != 2 || !slices.Contains([]int{320, 321}, got[0]) || !slices.Contains([]int{922, 923}, got[1]) {
		t.Errorf("on the equator: %v", got)
	}
}

// Where the names of the seasons mean little, the model says so, as the table does.
func TestSeasonsOfTheTropics(t *testing.T) {
	says := func(school, key string) bool {
		return slices.ContainsFunc(reckon(t, school, "season-model", "2027-04-20").Notes, func(p say.Phrase) bool { return p.Key == key })
	}
	if !says("equator", "season-dates.equator") || says("alder reach", "season-dates.equator") || says("alder reach", "season-dates.tropics") {
		t.Error("the notes are not those of the place")
	}
}

// overheadDays reads a list of two dates as month × 100 + day.
func overheadDays(v say.Value) []int {
	var days []int
	if v.Kind == say.CalendarDay {
		days = append(days, int(v.Time.Month())*100+v.Time.Day())
	}
	for _, part := range v.Phrase.With {
		days = append(days, overheadDays(part)...)
	}
	return days
}

// The Sun's distance: least in January, 147.1 million km, most in July, 152.1 (NASA's
// fact sheet of the Earth, from memory).
func TestSeasonModelDistances(t *testing.T) {
	r := reckon(t, "south", "season-model", "2027-04-20")
	entrytest.Near(t, "January", entrytest.Fact(t, r, "nearest").Number, 147.1, 0.1)
	entrytest.Near(t, "July", entrytest.Fact(t, r, "farthest").Number, 152.1, 0.1)
}

// Without answers the block shows where the ball stands and nothing that pupils are to find:
// no noon, no day length, no season, no word on distance. The way round is the Earth's,
// anticlockwise from above the north pole: March, June, September, December.
func TestSeasonModelKeepsAnswersBack(t *testing.T) {
	for _, school := range []string{"alder reach", "south", "equator", "arctic"} {
		r := reckon(t, school, "season-model", "2027-04-20", "answers=false")
		if len(r.Drawings) != 1 || len(r.Tables) != 1 || len(r.Working) > 0 || len(r.Notes) != 1 {
			t.Fatalf("%s: %d drawings, %d tables, %d workings, %d notes", school, len(r.Drawings), len(r.Tables), len(r.Working), len(r.Notes))
		}
		var columns []string
		for _, c := range r.Tables[0].Columns {
			columns = append(columns, c.Name)
		}
		if want := []string{"turn", "date", "ball"}; !slices.Equal(columns, want) {
			t.Errorf("%s: columns %v, want %v", school, columns, want)
		}
		want := []string{"left of the lamp, facing the wall", "behind the lamp, far from the wall", "right of the lamp, facing the wall", "between lamp and wall"}
		if got := entrytest.Texts(t, r, "stations", "ball"); !slices.Equal(got, want) {
			t.Errorf("%s: the ball stands %q", school, got)
		}
		for _, row := range r.Tables[0].Rows {
			if len(row.Cells) != len(columns) {
				t.Errorf("%s: a row of %d cells", school, len(row.Cells))
			}
		}
	}
}
