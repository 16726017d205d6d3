package rocket

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const (
	argGroup form.Key[string] = "group"
	argBy    form.Key[string] = "by"
)

func rocketLog() entry.Entry {
	return entry.Entry{
		Name:    "rocket-log",
		Summary: "The class's flights: heights with their doubt, which rocket did best, and whether the test was fair.",
		Arguments: append(form.Form{
			{Key: argGroup, Default: "", Doc: "The group whose flights count; all of them together where none is named."},
			{Key: argBy, Choices: []string{"fins", "nose_mm", "body_mm", "other"}, Assumed: "the first of these that was changed", Doc: "What the rockets are compared by."},
			{Key: argAngleOff, Unit: "deg", Min: 0, Max: 10, Default: usualCare.Angle.Degrees(), Doc: "How well an angle is read."},
			{Key: argBaselineOffM, Unit: "m", Min: 0, Max: 10, Default: usualCare.Length.Metres(), Doc: "How well the baseline is measured."},
			{Key: argTimeOffS, Unit: "s", Min: 0, Max: 2, Default: usualCare.Time.Seconds(), Doc: "How well a time is taken."},
			leastAngle,
		}, flightArguments...),
		Settings: slices.Concat(logSettings, flightSettings),
		Facts: slices.Concat([]entry.Fact{
			{Name: "flights", Doc: "how many flights count"},
			{Name: "rockets", Doc: "how many different rockets there were"},
			{Name: "changed", Doc: "what was changed from rocket to rocket"},
			{Name: "best", Doc: "the rocket with the highest mean"},
			{Name: "best_mean", Unit: "m", Doc: "its mean height"},
			{Name: "difference", Unit: "m", Doc: "by how much its mean is above that of the lowest rocket"},
			{Name: "difference_doubt", Unit: "m", Doc: "how far that difference may be wrong, in 95 of 100 tests"},
			{Name: "scatter", Unit: "m", Doc: "how far one flight usually lies from the mean of its rocket, as a standard deviation"},
			{Name: "finding", Doc: "what the flights show, in words"},
			{Name: "fair", Doc: "whether one thing only was changed, and each rocket had the same stamps"},
			{Name: "fair_why", Doc: "why, or why not"},
			entry.Truth("kept", "whether the records hold a flight"),
		}, pairedFacts),
		Sources:  []string{sourceHeights, sourceFlight, sourceDrag, "Doubt of a difference: Student's t with the scatter that all rockets share, 95 %", sourcePaired, entry.SourceOutlier},
		Harmless: "Reads flights that were flown already; launching is the work of rocket-zone.",
		Reckon:   reckonRocketLog,
	}
}

// A flown rocket is one row of the records with its height.
type flown struct {
	group, stamp string
	design       [4]string // by traits
	pipe         string
	height       rocket.Height
	way          string // how it was measured, a key of the words
}

// traits are the columns of the records that tell rockets apart, in the order in
// which they are compared, each with the key of its name.
func traits() [4][2]string {
	return [4][2]string{
		{"fins", "rocket-log.trait_fins"}, {"nose_mm", "rocket-log.trait_nose"},
		{"body_mm", "rocket-log.trait_body"}, {"other", "rocket-log.trait_other"},
	}
}

func reckonRocketLog(v form.Values) (result.Result, error) {
	flights, err := flightsOf(v)
	if err != nil {
		return result.Result{}, err
	}
	if len(flights) == 0 {
		return emptyLog(), nil
	}
	by := comparedBy(v, flights)
	rockets := rocketsOf(flights, by)
	scatter, freedom := rocket.Scatter(seriesOf(rockets)...)
	r := result.Result{Facts: slices.Concat([]result.Fact{
		{Name: "flights", Value: say.Count(len(flights))},
		{Name: "rockets", Value: say.Count(len(rockets))},
		{Name: "changed", Value: changedIn(flights)},
	}, outcome(rockets, by, scatter, freedom), fairness(flights), []result.Fact{entry.True("kept", true)})}
	r.Tables = []result.Table{rocketsTable(rockets, by), flightsTable(flights)}
	if p, ok := pairedOf(flights, rockets, by); ok {
		r.Facts = append(r.Facts, p.facts()...)
		for i := range r.Facts {
			if r.Facts[i].Name == "finding" {
				r.Facts[i].Value = p.finding(by)
			}
		}
		r.Tables = append(r.Tables, p.table(by))
		r.Notes = append(r.Notes, p.note())
	} else {
		r.Facts = append(r.Facts, noPairs()...)
		if groups := flownGroups(flights); len(groups) > 1 {
			r.Tables = append(r.Tables, logGroupsTable(flights, groups))
			r.Notes = append(r.Notes, say.Line("rocket-log.note_groups"))
		}
	}
	finding, _ := r.Fact("finding")
	odd, some := oddFlight(flights, rockets)
	r.Drawings = []drawing.Drawing{flightsChart(rockets, by, odd)}
	r.Drawings[0].Finding = say.Line("rocket-log.chart_finding", finding)
	if some {
		which := entry.OfGroup(say.Words("rocket-log.flight_number", say.Count(odd+1)), flights[odd].group)
		r.Drawings[0].Finding = say.Line("rocket-log.chart_finding_odd", finding, which, say.Metres(flights[odd].height.Value, 1))
		r.Tables[1].Rows[odd].Marked = true
	}
	r.Notes = append(r.Notes, say.Line("rocket-log.note_doubt"))
	r.Working = []say.Phrase{say.Line("rocket-log.working_mean"), say.Line("rocket-log.working_doubt")}
	return r, nil
}

func emptyLog() result.Result {
	none := say.None("rocket-log.no_records")
	r := result.Result{Notes: []say.Phrase{say.Line("rocket-log.how_to")}}
	for _, f := range rocketLog().Facts {
		if f.Truth {
			r.Facts = append(r.Facts, entry.True(f.Name, false))
			continue
		}
		value := none
		if f.Name == "flights" || f.Name == "rockets" || f.Name == "pairs" {
			value = say.Count(0)
		}
		r.Facts = append(r.Facts, result.Fact{Name: f.Name, Value: value})
	}
	return r
}

// flightsOf turns the records into flights, those of one group or of all.
func flightsOf(v form.Values) ([]flown, error) {
	records, group := school.RecordsRocketFlights.Of(v), argGroup.Of(v)
	if len(records.Rows) == 0 {
		return nil, nil
	}
	z, err := setZoneOf(v)
	if err != nil {
		return nil, err
	}
	var flights []flown
	for i, row := range records.Rows {
		if group != "" && argGroup.Of(row) != group {
			continue
		}
		f := flown{group: argGroup.Of(row), stamp: school.RocketFlightsStamp.Of(row), pipe: written(row, "pipe_deg")}
		for n, trait := range traits() {
			f.design[n] = written(row, trait[0])
		}
		if f.height, f.way, err = heightOf(v, row, z, careOf(v)); err != nil {
			return nil, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		flights = append(flights, f)
	}
	if len(flights) == 0 {
		return nil, fmt.Errorf("no flights are of the group %q", group)
	}
	return flights, nil
}

// written is a cell as text, "" where it is empty.
func written(row form.Values, column string) string {
	switch x := row[column].(type) {
	case int:
		return strconv.Itoa(x)
	case float64:
		return strconv.FormatFloat(x, 'f', -1, 64)
	case string:
		return strings.TrimSpace(x)
	}
	return ""
}

// heightOf takes both stations where both read an angle, else one, else the time.
// A row without a baseline was read from the zone's station.
func heightOf(v, row form.Values, z zone, care rocket.Care) (rocket.Height, string, error) {
	baseline, eye := z.station, quantity.Metres(school.ClassEyeHeightM.Of(v))
	if argBaselineM.In(row) {
		baseline = quantity.Metres(argBaselineM.Of(row))
	}
	apart := 2 * baseline
	if argApartM.In(row) {
		apart = quantity.Metres(argApartM.Of(row))
	}
	first, second := quantity.Degrees(school.RocketFlightsAngleDeg.Of(row)), quantity.Degrees(school.RocketFlightsSecondAngleDeg.Of(row))
	switch {
	case school.RocketFlightsAngleDeg.In(row) && school.RocketFlightsSecondAngleDeg.In(row):
		h, err := rocket.TwoStations(
			rocket.Sighting{Elevation: first, Bearing: quantity.Degrees(school.RocketFlightsBearingDeg.Of(row))},
			rocket.Sighting{Elevation: second, Bearing: quantity.Degrees(school.RocketFlightsSecondBearingDeg.Of(row))}, apart, eye, care)
		return h, "rocket-log.two_stations", err
	case school.RocketFlightsAngleDeg.In(row):
		h, err := rocket.OneStation(first, baseline, eye, care)
		return h, "rocket-log.one_station", err
	case school.RocketFlightsSecondAngleDeg.In(row):
		h, err := rocket.OneStation(second, apart-baseline, eye, care)
		return h, "rocket-log.one_station", err
	case argFlightS.In(row):
		lasting := time.Duration(argFlightS.Of(row) * float64(time.Second))
		still := z.air
		still.Along = 0
		h, err := rocket.FromTime(z.rocket, z.launch, still, lasting, care)
		return h, "rocket-log.by_time", err
	}
	return rocket.Height{}, "", errors.New("a flight needs angle_deg, second_angle_deg or flight_s")
}

// comparedBy is the number of the trait by which rockets are compared.
func comparedBy(v form.Values, flights []flown) int {
	for n, trait := range traits() {
		if argBy.Of(v) == trait[0] || !argBy.In(v) && len(valuesOf(flights, n)) > 1 {
			return n
		}
	}
	return 0
}

// valuesOf are the different values of a trait, in order of their size.
func valuesOf(flights []flown, trait int) []string {
	var values []string
	for _, f := range flights {
		if !slices.Contains(values, f.design[trait]) {
			values = append(values, f.design[trait])
		}
	}
	slices.SortFunc(values, byNumber)
	return values
}

func byNumber(a, b string) int {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX == nil && errY == nil && x != y {
		return int(math.Copysign(1, x-y))
	}
	return strings.Compare(a, b)
}

// A compared rocket is all flights with one value of the trait.
type compared struct {
	value  string
	series rocket.Series
	flown  []int           // places of its flights among all
	doubt  quantity.Length // of one height, the largest
	stamps []string
}

func rocketsOf(flights []flown, by int) []compared {
	var rockets []compared
	for _, value := range valuesOf(flights, by) {
		c := compared{value: value}
		for i, f := range flights {
			if f.design[by] == value {
				c.series, c.flown = append(c.series, f.height.Value), append(c.flown, i)
				c.doubt = max(c.doubt, f.height.Spread())
				c.stamps = append(c.stamps, f.stamp)
			}
		}
		slices.Sort(c.stamps)
		rockets = append(rockets, c)
	}
	return rockets
}

// oddFlight is the flight that departs most clearly from the middle one of its rocket, by
// more than a height may be wrong: -1 and false where there is none. A rocket that flew
// only once or twice has no middle one.
func oddFlight(flights []flown, rockets []compared) (int, bool) {
	var off []float64
	var which []int
	doubt := 0.0
	for _, c := range rockets {
		if len(c.series) < 3 {
			continue
		}
		middle := quantity.Median(c.series)
		for _, i := range c.flown {
			off, which = append(off, (flights[i].height.Value-middle).Metres()), append(which, i)
		}
		if spread := c.doubt.Metres(); !math.IsInf(spread, 1) {
			doubt = max(doubt, spread)
		}
	}
	if at, ok := entry.Outlier(off, doubt); ok {
		return which[at], true
	}
	return -1, false
}

func seriesOf(rockets []compared) []rocket.Series {
	all := make([]rocket.Series, len(rockets))
	for i, c := range rockets {
		all[i] = c.series
	}
	return all
}

// name says which rocket it is: "5 fins".
func (c compared) name(by int) say.Value {
	if c.value == "" {
		return say.Words("rocket-log.unnamed")
	}
	key := [4]string{"rocket-log.with_fins", "rocket-log.with_nose", "rocket-log.with_body", "rocket-log.with_other"}[by]
	if x, err := strconv.ParseFloat(c.value, 64); err == nil && (by == 1 || by == 2) {
		return say.Words(key, say.Number(x, "mm", 0))
	}
	return say.Words(key, say.Text(c.value))
}

// outcome compares the highest mean with the lowest.
func outcome(rockets []compared, by int, scatter quantity.Length, freedom int) []result.Fact {
	best, worst := rockets[0], rockets[0]
	for _, c := range rockets {
		if c.series.Mean() > best.series.Mean() {
			best = c
		}
		if c.series.Mean() < worst.series.Mean() {
			worst = c
		}
	}
	difference, off, spread := say.None("rocket-log.one_rocket"), say.None("rocket-log.one_rocket"), say.None("rocket-log.not_repeated")
	finding := say.Words("rocket-log.found_one")
	if freedom > 0 {
		spread = say.Metres(scatter, 1)
	}
	if len(rockets) > 1 {
		gap := best.series.Mean() - worst.series.Mean()
		doubted := rocket.Doubt(scatter, freedom, len(best.series), len(worst.series))
		difference, off = say.Metres(gap, 1), say.Metres(doubted, 1)
		switch {
		case math.IsInf(doubted.Metres(), 1):
			off, finding = say.None("rocket-log.not_repeated"), say.Words("rocket-log.found_repeat")
		case gap > doubted:
			finding = say.Words("rocket-log.found_more", best.name(by), worst.name(by), difference, off)
		default:
			finding = say.Words("rocket-log.found_nothing", difference, off)
		}
	}
	return []result.Fact{
		{Name: "best", Value: best.name(by)}, {Name: "best_mean", Value: say.Metres(best.series.Mean(), 1)},
		{Name: "difference", Value: difference}, {Name: "difference_doubt", Value: off},
		{Name: "scatter", Value: spread}, {Name: "finding", Value: finding},
	}
}
