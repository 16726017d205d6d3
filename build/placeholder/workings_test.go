package placeholder_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// noSum are the steps without a sum of numbers, and why.
var noSum = map[string]string{
	"dial-day.working_length":        "it is the rule of every row of the table",
	"dial-day.working_compass":       "it is the rule of every row of the table",
	"dial-drift.working_turn":        "it is a rule in words",
	"dial-marks.working_point":       "it is a rule in words",
	"dial-marks.working_fit":         "it says what was searched for",
	"dial-marks.working_distance":    "it is a rule in words",
	"dial-north.working_equal":       "it is a rule in words",
	"dial-table.working_clock":       "it is a rule in words",
	"lens-log.working_one":           "it is the rule of every row of the table",
	"lens-log.working_spread":        "it is a rule in words",
	"lens-pairs.working":             "it is the rule of every row of the table",
	"lens-power.working_far":         "what was measured is the result",
	"lens-rays.working_image":        "it is a rule in words",
	"lens-rays.working_detail":       "it is a rule in words",
	"lesson-sky.working":             "it is the rule of every row of the table",
	"moon-log.working":               "it says how a look is judged",
	"rocket-clinometer.working":      "it is a rule in words",
	"sun-day.working_in_all":         "it is a rule in words",
	"rocket-height.working_stations": "it is a rule in words",
	"rocket-log.working_mean":        "it is the rule of every row of the table",
	"rocket-log.working_doubt":       "it is a rule in words",
	"rocket-path.working_air":        "it says how the computer reckons",
	"rocket-zone.working_reach":      "it says what was searched for",
	"rocket-zone.working_clear":      "the larger of two numbers is taken, not reckoned",
	"sky-map.working_sidereal":       "star time is read off, not reckoned",
	"sky-map.working_pole":           "the height of the pole is the latitude",
	"strip-balls.working_best":       "it says what was searched for",
	"strip-log.working":              "it is the rule of every row of the table",
	"strip-table.working_bode":       "it is the rule of every row of the table",
	"sun-day.working":                "it is a rule in words",
}

// loose are numbers of a step that take no part in its sum, by their place.
var loose = map[string][]int{
	"tube-plan.working_cut":           {3}, // rounded up, or longer for other reasons
	"weight-table.working_leaves":     {4}, // what the speed is held against
	"weight-table.working_jump_small": {6}, // what comes of the weaker pull
}

// sameAsFact are the facts that a step ends with.
var sameAsFact = map[string][]string{
	"dial-clock.working":              {"dial_to_clock"},
	"dial-north.working_compass":      {"compass_for_true_north"},
	"dial-table.working_gnomon":       {"gnomon_height", "gnomon_base"},
	"lens-power.working_distances":    {"focal"},
	"lens-power.working_power":        {"power"},
	"place-facts.working_compass":     {"compass_for_true_north"},
	"place-facts.working_noon":        {"local_noon"},
	"rocket-height.working":           {"above_eye", "height"},
	"sand-glass.working_sand":         {"sand"},
	"sand-glass.working_timed":        {"sand"},
	"rocket-parts.working_upright":    {"upright"},
	"rocket-parts.working_run":        {"run"},
	"rocket-path.working_free":        {"apogee_no_air"},
	"rocket-wrap.working_wrap":        {"wrap"},
	"rocket-wrap.working_slant":       {"cone_slant"},
	"rocket-wrap.working_sector":      {"cone_angle"},
	"rocket-wrap.working_balance":     {"calibres"},
	"rocket-zone.working_free":        {"reach_no_air"},
	"rocket-zone.working_free_fixed":  {"reach_no_air"},
	"rocket-zone.working_margin":      {"reach_with_margin"},
	"strip-moon.working_moon":         {"moon_mm"},
	"strip-moon.working_star":         {"star_km"},
	"strip-table.working_scale":       {"square_scale"},
	"strip-table.working_earth":       {"earth_squares"},
	"strip-table.working_light":       {"light_to_earth"},
	"strip-table.working_walk":        {"walk_to_sun"},
	"tube-plan.working_magnification": {"magnification"},
	"tube-plan.working_far":           {"separation_infinity"},
	"tube-plan.working_near":          {"separation_nearest"},
	"weight-table.working_jump":       {"jump"},
	"weight-table.working_scale":      {"scale"},
	"world-cards.working_density":     {"density"},
	"world-cards.working_pull":        {"gravity"},
}

// variants are more uses of placeholders: those that bring out other steps, and
// measures that do not come out even.
var variants = map[string][][]string{
	"lens-power": {
		{"image_mm=83"}, {"image_mm=83.4", "object_m=1.237"}, {"image_mm=240", "object_m=2.5"}, {"power_dioptres=12"},
		{"magnifier_times=3"}, {"image_mm=666.5"}, {"image_mm=37.3", "object_m=0.1955"},
	},
	"moon-blank":  {{"turn=south"}},
	"moon-map":    {{"face=mean"}, {"turn=south", "time=6:00"}, {"turn=seen", "time=20:30"}, {"show=tonight"}},
	"moon-poster": {{"turn=south"}},
	"lens-rays": {
		{"swapped=true"}, {"object_m=3"}, {"stock.front_lens_focal_mm=251.3", "stock.eye_lens_focal_mm=68.9", "stock.front_lens_diameter_mm=49.7"},
		{"stock.front_lens_focal_mm=410", "stock.eye_lens_focal_mm=113"},
	},
	"tube-plan": {
		{"nearest_m=2.345"}, {"nearest_m=0.7"}, {"stock.front_lens_focal_mm=251.3", "stock.eye_lens_focal_mm=68.9", "stock.front_lens_diameter_mm=49.7"},
		{"stock.front_lens_focal_mm=410", "stock.eye_lens_focal_mm=113.6", "nearest_m=3.1"},
	},
	"mars-map": {
		{"school.way_to=Halifax", "school.way_km=185"}, {"from=Phoenix", "to=Viking 2"}, {"from=Hellas Planitia", "to=Olympus Mons"},
		{"from=Spirit", "to=Opportunity", "school.way_to=the other side of the harbour", "school.way_km=1.5"},
	},
	"mars-poster": {{"school.way_to=Halifax", "school.way_km=185"}},
	"mars-blank":  {{"school.way_to=Halifax", "school.way_km=185"}, {"school.way_to=the other side of the harbour", "school.way_km=1.5"}},
	"lens-pairs":  {{"longest_mm=700"}},
	"strip-balls": {{"stock.strip_squares=240", "stock.square_mm=115"}, {"stock.strip_squares=77"}, {"to=mars"}},
	"strip-field": {{"to=neptune"}, {"to=jupiter", "class.pace_m=0.7"}, {"turn_deg=17.3"}, {"turn_deg=350"}, {"field.length_m=61", "field.width_m=37.5"}},
	"strip-moon":  {{"stock.strip_squares=240", "stock.square_mm=115"}, {"to=earth"}, {"stock.square_mm=101.3"}, {"to=jupiter"}},
	"strip-table": {{"stock.strip_squares=240", "stock.square_mm=115"}, {"class.walk_km_h=4.3"}, {"to=earth"}, {"to=pluto"}, {"million_km_a_square=20"}, {"to=mercury"}},
	"strip-time":  {{"stock.strip_squares=240", "stock.square_mm=115"}, {"stock.strip_squares=77"}, {"stock.strip_squares=500", "stock.square_mm=98.7"}},
	"world-cards": {
		{"world=venus"}, {"world=earth"}, {"world=moon"}, {"world=mars"}, {"world=ceres"}, {"world=jupiter"},
		{"world=saturn"}, {"world=uranus"}, {"world=neptune"}, {"world=pluto"}, {"world=comet"},
	},
	"journey-table": {
		{"world=mercury"}, {"world=venus"}, {"world=ceres"}, {"world=jupiter"}, {"world=saturn"}, {"world=uranus"}, {"world=neptune"}, {"world=pluto"},
	},
	"weight-table": {
		{"world=mercury", "mass_kg=37.5"}, {"world=venus"}, {"world=earth"}, {"world=mars", "jump_m=0.45"}, {"world=ceres", "jump_m=2.3516"}, {"world=earth", "jump_m=1.15"}, {"world=jupiter", "mass_kg=28"},
		{"world=saturn"}, {"world=uranus"}, {"world=neptune"}, {"world=pluto", "jump_m=0.27"}, {"world=comet"}, {"world=comet", "mass_kg=31", "jump_m=0.07"},
	},
	"rocket-height": {{"angle=37", "baseline_m=15"}, {"angle=61.4", "baseline_m=12.35"}, {"angle=80", "baseline_m=33", "class.eye_height_m=1.287"}, {"angle=20", "second_angle=30", "baseline_m=20"}},
	"rocket-parts":  {{"run_mm=1234.6", "socket_mm=17.4", "neck_mm=33.3"}, {"size=long"}, {"size=short", "socket_mm=22.5"}},
	"rocket-wrap":   {{"size=long"}, {"size=short"}, {"stock.pipe_outside_mm=26.7", "stock.pipe_play_mm=0.55"}, {"nose_mm=33.4", "body_mm=181.7"}, {"fins=4", "stock.rocket_paper_g_m2=120"}},
	"rocket-path":   {{"angle=63.7", "stock.launch_speed_m_s=23.45"}, {"angle=30", "pipe_end_m=0.45"}, {"angle=90"}},
	"rocket-zone":   {{"stock.launch_speed_m_s=17.35", "field.length_m=150", "field.width_m=150"}, {"field.wind_m_s=2", "field.margin_percent=37"}, {"least_angle=67"}, {"least_angle=52.5", "stock.launch_speed_m_s=23.7"}, {"least_angle=90"}},
	"dial-table":    {{"stock.style_mm=133.7"}, {"stock.style_mm=95"}},
	"dial-drift":    {{"marked=2027-04-13"}, {"marked=2027-02-01"}, {"marked=2026-11-01"}},
	"dial-day":      {{"height_mm=123.4"}},
	"dial-north":    {{"height_mm=250"}},
	"sand-glass":    {{"timed_s=83.5"}, {"minutes=7.5", "hole_mm=5.3", "grain_mm=0.55"}, {"timed_s=41", "minutes=12"}},
	"sky-wheel":     {{"school.paper=Letter"}},
	"water-clock":   {{"timed_s=371.5"}, {"bottle_mm=73.4", "hole_mm=1.6", "fill_mm=143"}, {"timed_s=1234", "fill_mm=211", "last_mm=37"}, {"bottle_mm=300", "hole_mm=1.2"}, {"step_min=0.5"}},
}

// workingDates are days with and without daylight saving, the equation of time on
// both sides of nothing.
var workingDates = []string{"2027-01-14", "2027-04-20", "2027-10-09"}

// variedAt are the schools at which the variants are evaluated too.
var variedAt = []string{"alder reach", "south", "far east"}

// Every working comes out on a calculator, in English as in French: what its own numbers
// give is the result that it shows, to half a unit of the last digit, and a result that
// the placeholder also prints as a fact is that fact.
func TestWorkingsComeOut(t *testing.T) {
	c := check{T: t, summed: map[string]int{}, seen: map[string]bool{}, told: map[string]int{}}
	read := func(customary bool) (list []reading) {
		for _, code := range typeset.Languages() {
			w, err := typeset.Language(code, customary)
			g, known := map[string]grammar{"en": englishGrammar, "fr": frenchGrammar}[code]
			if err != nil || !known {
				t.Fatalf("%s: no grammar for its workings, or no words: %v", code, err)
			}
			list = append(list, reading{w, g})
		}
		return list
	}
	c.readings = read(false)
	for where := range entrytest.Schools {
		for _, e := range entries() {
			if _, log := entrytest.SampleLogs[e.Name]; log {
				continue
			}
			for _, date := range workingDates {
				c.result(e.Name, where+", "+date, reckon(t, where, e.Name, date))
			}
			if !slices.Contains(variedAt, where) {
				continue
			}
			for _, given := range variants[e.Name] {
				c.result(e.Name, where+", "+strings.Join(given, " "), reckon(t, where, e.Name, workingDates[1], given...))
			}
		}
	}
	for _, customary := range []bool{false, true} {
		c.readings = read(customary)
		for name, text := range entrytest.SampleLogs {
			c.result(name, "a sample log", reckonLog(t, "alder reach", name, text))
			if strings.HasPrefix(name, "dial-") { // on a polar dial other steps
				c.result(name, "a sample log near the equator", reckonLog(t, "line north", name, text))
			}
		}
	}
	for _, e := range entries() {
		if _, log := entrytest.SampleLogs[e.Name]; log {
			continue
		}
		for _, given := range append([][]string{nil}, variants[e.Name]...) {
			c.result(e.Name, "in feet, "+strings.Join(given, " "), reckon(t, "south", e.Name, workingDates[1], given...))
		}
	}
	for _, key := range c.readings[0].words.Keys() {
		if _, word, _ := strings.Cut(key, "."); strings.HasPrefix(word, "working") && word != "working" && !c.seen[key] {
			t.Errorf("%s is never shown", key)
		}
	}
	for key, why := range noSum {
		if !c.seen[key] {
			t.Errorf("%s has no sum, because %s, and is never shown", key, why)
		} else if n := c.summed[key]; n > 0 {
			t.Errorf("%s has no sum, because %s, and %d were found", key, why, n)
		}
	}
	for key := range sameAsFact { // a key that is misspelt would check nothing
		if !c.seen[key] {
			t.Errorf("%s is never shown", key)
		}
	}
	t.Logf("%d steps of %d kinds were worked out, %d sums; %d failed", c.steps, len(c.summed), c.sums, c.failed)
}

// A check holds workings against a calculator. Of each kind of step it reports three
// failures and counts the rest.
type check struct {
	*testing.T
	readings            []reading
	steps, sums, failed int
	summed              map[string]int
	seen                map[string]bool
	told                map[string]int
}

// A reading is a language with its way of writing numbers.
type reading struct {
	words *typeset.Words
	grammar
}

func (c *check) result(name, where string, r result.Result) {
	for _, in := range c.readings {
		c.read(in, name, where+", "+in.words.Code, r)
	}
	// A sum that one language's words hide from the calculator is found in another.
	for _, p := range r.Working {
		for _, in := range c.readings[1:] {
			if first, other := c.readings[0].sums(p), in.sums(p); first != other {
				c.Errorf("%s, %s: %d sums in %s, %d in %s", p.Key, where, first, c.readings[0].words.Code, other, in.words.Code)
			}
		}
	}
}

// sums counts the runs with two sides in a step.
func (in reading) sums(p say.Phrase) (n int) {
	for _, chain := range in.equations(in.words.Metric().Line(p)) {
		n += max(0, len(chain)-1)
	}
	return n
}

func (c *check) read(in reading, name, where string, r result.Result) {
	lines := in.words.Working(r.Working)
	for i, p := range r.Working {
		if metric := in.words.Metric().Line(p); lines[i] != metric {
			c.Errorf("%s, %s: the working %q is not the metric one, %q", name, where, lines[i], metric)
		}
		if faults := c.step(in, p, lines[i], r); len(faults) > 0 {
			c.failed++
			if c.told[in.words.Code+p.Key]++; c.told[in.words.Code+p.Key] <= 3 {
				c.Errorf("%s, %s: %s\n\t%s", p.Key, where, lines[i], strings.Join(faults, "\n\t"))
			}
		}
	}
}

// step returns what is wrong with one step.
func (c *check) step(reads reading, p say.Phrase, line string, r result.Result) (faults []string) {
	c.seen[p.Key] = true
	var in []string
	var ends []shown
	for _, chain := range reads.equations(line) {
		if len(chain) < 2 {
			continue
		}
		end := chain[len(chain)-1]
		if !end.one {
			faults = append(faults, end.text+" is not worked out")
			continue
		}
		if strings.Contains(end.text, "h") || strings.Contains(end.text, "min") || strings.Contains(end.text, ":") {
			end.half = 30 // 12 h of a time to the minute
			if slices.ContainsFunc(p.With, func(v say.Value) bool {
				return v.Kind == say.Lasting && v.Decimals > 0 && reads.words.Metric().Text(v) == end.text
			}) {
				end.half = 0.5
			}
		}
		ends = append(ends, end)
		for _, one := range chain {
			in = append(in, one.text)
			if off := math.Abs(one.value - end.value); !(off <= end.half*(1+1e-9)+1e-12*math.Abs(end.value)) {
				faults = append(faults, one.text+" gives "+digits(one.value)+", not "+end.text)
			}
			c.sums++
		}
		c.sums--
	}
	if len(ends) > 0 {
		c.steps++
		c.summed[p.Key]++
	} else if noSum[p.Key] == "" {
		return append(faults, "holds no sum")
	}
	if noSum[p.Key] == "" {
		for i, v := range p.With {
			text := reads.words.Metric().Text(v)
			numeric := v.Kind == say.Quantity || v.Kind == say.Lasting
			if numeric && !slices.Contains(loose[p.Key], i+1) && !slices.ContainsFunc(in, func(s string) bool { return strings.Contains(s, text) }) {
				faults = append(faults, text+" takes no part in a sum")
			}
		}
	}
	for _, name := range sameAsFact[p.Key] {
		v, ok := r.Fact(name)
		if !ok || v.Kind == say.Nothing {
			if !ok {
				faults = append(faults, "there is no fact "+name)
			}
			continue
		}
		text := reads.words.Metric().Text(v)
		fact, _ := leading(text, reads.tokens(text))
		if !slices.ContainsFunc(ends, func(s shown) bool { return alike(s, fact) }) {
			faults = append(faults, "nothing is "+text+", the fact "+name)
		}
	}
	return faults
}

// alike reports whether two numbers with the same or other digits are the same thing:
// the one with fewer is the other one rounded.
func alike(a, b shown) bool {
	off := math.Abs(a.value - b.value)
	if a.half == b.half {
		return off <= 1e-9*math.Abs(a.value)
	}
	return b.one && off <= math.Max(a.half, b.half)*(1+1e-9)
}

// digits writes a number as a calculator shows it.
func digits(x float64) string { return strconv.FormatFloat(x, 'g', 8, 64) }
