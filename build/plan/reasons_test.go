package plan

import (
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// figure is a number as a person would read it off: 46.09, 13:18:00, 28.
var figure = regexp.MustCompile(`\b\d[\d.:]*\d\b|\b\d\b`)

// shown takes the tags off a page but for the values that they hold for machines.
func shown(page []byte) string {
	return anyTag.ReplaceAllStringFunc(strings.ReplaceAll(string(page), "T", " "), func(tag string) string {
		return " " + strings.Join(regexp.MustCompile(`(?:value|datetime)="[^"]*"`).FindAllString(tag, -1), " ") + " "
	})
}

// What a golden page holds of numbers is typed in its unit, or the head of the
// file says where it comes from. So nobody updates a golden file to a wrong number
// without having to write down why it should be right.
func TestGoldenNumbersHaveReasons(t *testing.T) {
	names, err := filepath.Glob("../../testdata/golden/*.txtar")
	if err != nil || len(names) < 2 {
		t.Fatalf("golden files are %v, %v", names, err)
	}
	for _, name := range names {
		a := parseArchive(readFile(t, name))
		known := figure.FindAllString(string(a.comment), -1)
		for _, f := range a.unit() {
			known = append(known, figure.FindAllString(string(f.Data), -1)...)
		}
		for _, f := range a.files {
			if f.name != "want class" && f.name != "want staff" {
				continue
			}
			for _, x := range figure.FindAllString(shown(f.data), -1) {
				if !slices.Contains(known, x) {
					t.Errorf("%s, %s: nothing says where %s comes from", filepath.Base(name), f.name, x)
				}
			}
		}
	}
}

// The reasons of language.txtar that can be reckoned again are, from the table
// and the formulas that they name.
func TestGoldenReasonsHold(t *testing.T) {
	a := parseArchive(readFile(t, "../../testdata/golden/language.txtar"))
	want := ""
	for _, f := range a.files {
		if f.name == "want staff" {
			want = string(f.data)
		}
	}
	var row []string
	for text := range strings.SplitSeq(string(readFile(t, "../../testdata/reference/sun-positions.csv")), "\n") {
		if strings.HasPrefix(text, "erfa,2027-04-20T16:18:00Z,alder-reach,46.09,-64.77,") {
			row = strings.Split(text, ",")
		}
	}
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	if row == nil {
		t.Fatal("the table has no such row")
	}
	azimuth, altitude := number(row[9]), number(row[10])
	altitude += 1.02 / 60 / math.Tan((altitude+10.3/(altitude+5.11))*math.Pi/180) // Meeus 16.4
	values := regexp.MustCompile(`<data value="([\d.-]+)"[^>]*>([^<]*)</data>`).FindAllStringSubmatch(want, -1)
	found := map[string]string{}
	for _, m := range values {
		found[m[2]] = m[1]
	}
	if x := number(found["55.5°"]); math.Abs(x-altitude) > 1e-3 || math.Abs(azimuth-180) > 0.01 {
		t.Errorf("the page has %v for a height of %.4f at the azimuth %v", x, altitude, azimuth)
	}
	if x := number(found["10.0"]); math.Abs(x-300/30.06992276) > 1e-3 {
		t.Errorf("the page has %v squares, not %.4f", x, 300/30.06992276)
	}
	if !strings.Contains(want, `<time datetime="2027-04-20T13:18:00-03:00" class="first">13:18</time>`) {
		t.Error("the page has another noon than the table")
	}
}
