package almanac_test

import (
	"bufio"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"slices"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// The tasks of testdata/bench/astronomy-engine.mjs, done here: each returns the
// number of events found, so that both sides can be seen to do the same work.

var benchSchool = place.Place{
	Latitude:  quantity.Degrees(46.09),
	Longitude: quantity.Degrees(-64.77),
	Elevation: quantity.Metres(20),
	Zone:      time.FixedZone("UTC-4", -4*3600),
}

func yearOf(b almanac.Body) int {
	events := 0
	for d := (place.Date{Year: 2027, Month: 1, Day: 1}); d.Year == 2027; d = d.Add(1) {
		day := b.Day(benchSchool, d)
		events += len(day.Rises) + len(day.Transits) + len(day.Sets)
	}
	return events
}

func yearOfPhases() int {
	from := time.Date(2027, 1, 1, 0, 0, 0, 0, benchSchool.Zone)
	list, err := almanac.Phases(from, from.AddDate(1, 0, 0))
	if err != nil {
		return 0
	}
	return len(list)
}

var benchTasks = []struct {
	name string
	run  func() int
	goal float64 // times faster: our own aim; none is set for the Moon's year
}{
	{"sun-year", func() int { return yearOf(almanac.Sun) }, 10},
	{"moon-year", func() int { return yearOf(almanac.Moon) }, 0},
	{"phases-year", yearOfPhases, 5},
}

// BenchmarkYear times a year of which nothing is known yet.
func BenchmarkYear(b *testing.B) {
	for _, task := range benchTasks {
		b.Run(task.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				b.StopTimer()
				almanac.Forget()
				b.StartTimer()
				task.run()
			}
		})
	}
}

// BenchmarkBesideAstronomyEngine takes turns with astronomy-engine under Node on
// the same work and prints how many times faster this package is, by the medians.
// It is skipped where Node or the library is not installed (see testdata/bench).
func BenchmarkBesideAstronomyEngine(b *testing.B) {
	const folder = "../../testdata/bench"
	if _, err := os.Stat(folder + "/node_modules/astronomy-engine"); err != nil {
		b.Skip("astronomy-engine is not installed in testdata/bench")
	}
	cmd := exec.Command("node", "astronomy-engine.mjs", "--ask")
	cmd.Dir = folder
	in, err := cmd.StdinPipe()
	if err != nil {
		b.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		b.Skip("Node does not start:", err)
	}
	answers := bufio.NewScanner(out)
	for _, task := range benchTasks {
		b.Run(task.name, func(b *testing.B) {
			var ours, theirs []float64
			for b.Loop() {
				ms, check := ask(b, in, answers, task.name)
				almanac.Forget() // what a second round would find ready
				started := time.Now()
				found := task.run()
				ours = append(ours, float64(time.Since(started).Nanoseconds())/1e6)
				theirs = append(theirs, ms)
				if found != check {
					b.Fatalf("%s: %d events here, %d there", task.name, found, check)
				}
			}
			slices.Sort(ours)
			slices.Sort(theirs)
			mine, other := ours[len(ours)/2], theirs[len(theirs)/2]
			b.ReportMetric(mine, "ms-here")
			b.ReportMetric(other, "ms-there")
			b.ReportMetric(other/mine, "times-faster")
			b.ReportMetric(task.goal, "goal")
		})
	}
	if err := in.Close(); err != nil {
		b.Fatal(err)
	}
	if err := cmd.Wait(); err != nil {
		b.Fatal(err)
	}
}

func ask(b *testing.B, in io.Writer, answers *bufio.Scanner, task string) (ms float64, check int) {
	b.Helper()
	if _, err := io.WriteString(in, task+"\n"); err != nil {
		b.Fatal(err)
	}
	if !answers.Scan() {
		b.Fatal("no answer: ", answers.Err())
	}
	var answer struct {
		Ms    float64
		Check int
		Error string
	}
	if err := json.Unmarshal(answers.Bytes(), &answer); err != nil || answer.Error != "" {
		b.Fatal(err, answer.Error)
	}
	return answer.Ms, answer.Check
}
