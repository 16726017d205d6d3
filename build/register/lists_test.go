package register_test

import (
	"net/http"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/school"
)

const listsFile = unitFile + "\r\n# The box.\r\n[[stock.lenses]]\r\nlabel = \"bag A\"   # blue\r\ndiameter_mm = 50\r\nfocal_mm = 250.0\r\n\r\n# From the shop.\r\n[[stock.lenses]]\r\ndiameter_mm = 30\r\nlabel = \"bag B\"\r\npower_dioptres = 20\r\ncount = 4\r\n"

// What is typed into a list of tables changes its rows in the file and no byte besides.
func TestListsAreWritten(t *testing.T) {
	const bagA = "[[stock.lenses]]\r\nlabel = \"bag A\"   # blue\r\ndiameter_mm = 50\r\nfocal_mm = 250.0\r\n"
	empty := func(row string) (pairs []string) {
		for _, column := range []string{"label", "count", "diameter_mm", "focal_mm", "power_dioptres", "magnifier_times"} {
			pairs = append(pairs, "stock.lenses["+row+"]."+column, "")
		}
		return pairs
	}
	for _, c := range []struct {
		name, file string
		typ        []string
		want       string
	}{
		{"nothing", listsFile, nil, listsFile},
		{"a cell", listsFile, []string{"stock.lenses[0].focal_mm", "245 mm"}, strings.Replace(listsFile, "250.0", "245", 1)},
		{"a cell more", listsFile, []string{"stock.lenses[0].count", "12"}, strings.Replace(listsFile, "250.0\r\n", "250.0\r\ncount = 12\r\n", 1)},
		{"a row more, behind an empty one", listsFile, []string{"stock.lenses[3].label", "reading glass", "stock.lenses[3].diameter_mm", "75", "stock.lenses[3].power_dioptres", "2.5"}, listsFile + "\r\n[[stock.lenses]]\r\nlabel = \"reading glass\"\r\ndiameter_mm = 75\r\npower_dioptres = 2.5\r\n"},
		{"a row less", listsFile, empty("0"), strings.Replace(listsFile, bagA, "", 1)},
		{"a row less and another changed", listsFile, append(empty("0"), "stock.lenses[1].count", "5"), strings.NewReplacer(bagA, "", "count = 4", "count = 5").Replace(listsFile)},
		{"the first corner", unitFile, []string{"field.outline[0].east_m", "−3", "field.outline[0].north_m", "40", "field.outline[1].east_m", "0", "field.outline[1].north_m", "0"}, unitFile + "\r\n[[field.outline]]\r\neast_m = -3\r\nnorth_m = 40\r\n\r\n[[field.outline]]\r\neast_m = 0\r\nnorth_m = 0\r\n"},
		{"a day without lesson times", strings.Replace(unitFile, "[unit]", "cycle_days = 6\r\n\r\n[unit]", 1), []string{"term.cycle[0].day", "3", "term.cycle[1].day", "4", "term.cycle[1].times", "9h00–9h50, 10:00-10:50"}, strings.Replace(unitFile, "[unit]", "cycle_days = 6\r\n\r\n[[term.cycle]]\r\nday = 3\r\ntimes = []\r\n\r\n[[term.cycle]]\r\nday = 4\r\ntimes = [\"9:00-9:50\", \"10:00-10:50\"]\r\n\r\n[unit]", 1)},
	} {
		b := newBench(t, map[string]string{"unit.toml": c.file})
		b.with("school", c.typ...)
		b.saved(c.name)
		if got := b.file("unit.toml"); strings.TrimSpace(got) != strings.TrimSpace(c.want) {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

// What is wrong is beside its cell, in the words of proof, and nothing is written.
func TestWrongCellsOfLists(t *testing.T) {
	for _, c := range []struct {
		name string
		file string
		typ  []string
		at   string
		want []string
	}{
		{"out of bounds", listsFile, []string{"stock.lenses[1].diameter_mm", "2"}, "stock-lenses-1-diameter-mm", []string{"Lenses in the box, Row 2, Width : 2 mm is outside 3 mm to 500 mm."}},
		{"no number", listsFile, []string{"stock.lenses[0].focal_mm", "long"}, "stock-lenses-0-focal-mm", []string{`This is "long", want a number`}},
		{"a label that must be there", listsFile, []string{"stock.lenses[3].diameter_mm", "30"}, "stock-lenses-3-label", []string{"Lenses in the box, New row, Called : This is missing."}},
		{"markup", listsFile, []string{"stock.lenses[0].count", `"><script>x</script>`}, "stock-lenses-0-count", nil},
		{"a day twice, below an empty row", strings.Replace(unitFile, "[unit]", "cycle_days = 6\r\n\r\n[[term.cycle]]\r\nday = 3\r\ntimes = []\r\n\r\n[unit]", 1), []string{"term.cycle[2].day", "3"}, "term-cycle-2-day", []string{"Day 3 is there twice"}},
		{"times over one another", strings.Replace(unitFile, "[unit]", "cycle_days = 6\r\n\r\n[unit]", 1), []string{"term.cycle[1].day", "3", "term.cycle[1].times", "9:00-9:50, 9:30-10:00"}, "term-cycle-1-times", []string{"This one begins before the one before it ends"}},
	} {
		b := newBench(t, map[string]string{"unit.toml": c.file})
		b.with("school", c.typ...)
		if b.code != http.StatusUnprocessableEntity || b.file("unit.toml") != c.file || b.pressed != 0 {
			t.Errorf("%s: %d, pressed %d times", c.name, b.code, b.pressed)
		}
		for _, want := range []string{`<a href="#` + c.at + `">`, `id="` + c.at + `-wrong"`, `aria-invalid="true" aria-describedby="` + c.at + `-wrong"`} {
			if !strings.Contains(b.body, want) {
				t.Errorf("%s: no %s in %s", c.name, want, b.text())
			}
		}
		for _, want := range c.want {
			if !strings.Contains(b.text(), want) {
				t.Errorf("%s: no %q in %s", c.name, want, b.text())
			}
		}
		for i := 0; i < len(c.typ); i += 2 {
			if got := b.typed().Get(c.typ[i]); got != c.typ[i+1] {
				t.Errorf("%s: %q was typed, the cell says %q", c.name, c.typ[i+1], got)
			}
		}
		if strings.Contains(b.body, "<script>x") {
			t.Errorf("%s: what was typed is markup", c.name)
		}
	}
}

// A list in brackets stays as it is until somebody changes it in the file; what else is
// typed is saved.
func TestListInBrackets(t *testing.T) {
	file := unitFile + "\r\n[stock]\r\nballs = [{name = \"netball\", diameter_mm = 220}]\r\n"
	b := newBench(t, map[string]string{"unit.toml": file})
	b.with("school", "stock.balls[1].name", "marble", "stock.balls[1].diameter_mm", "16")
	if b.code != http.StatusUnprocessableEntity || b.file("unit.toml") != file || !strings.Contains(b.text(), "In unit.toml this is written between brackets; change it there with a text editor.") || !strings.Contains(b.body, `<a href="#stock-balls">`) {
		t.Errorf("%d %s", b.code, b.text())
	}
	b.with("school", "school.name", "Oak School")
	b.saved("the name")
	if want := strings.Replace(file, "Elm", "Oak", 1); b.file("unit.toml") != want {
		t.Errorf("%s", b.file("unit.toml"))
	}
}

// A faulty cell of the file is on the page as it is written, and mended there.
func TestFaultyCellOfAList(t *testing.T) {
	file := strings.Replace(listsFile, "count = 4", "count = \"four\" # pieces", 1)
	b := newBench(t, map[string]string{"unit.toml": file})
	b.get("school")
	if b.typed().Get("stock.lenses[1].count") != "four" || !strings.Contains(b.body, `id="stock-lenses-1-count-wrong"`) {
		t.Errorf("%q %s", b.typed().Get("stock.lenses[1].count"), b.text())
	}
	b.with("school", "stock.lenses[1].count", "4")
	b.saved("mended")
	if want := strings.Replace(listsFile, "count = 4", "count = 4 # pieces", 1); b.file("unit.toml") != want {
		t.Errorf("%s", b.file("unit.toml"))
	}
}

// A list that was not touched follows the file; of one that was, both are told.
func TestListChangedMeanwhile(t *testing.T) {
	theirs := strings.Replace(listsFile, "count = 4", "count = 6", 1)
	b := newBench(t, map[string]string{"unit.toml": listsFile})
	b.get("school")
	v := b.typed()
	b.save("unit.toml", theirs)
	b.post("school", v)
	if b.code != http.StatusConflict || b.typed().Get("stock.lenses[1].count") != "6" || !strings.Contains(b.text(), "bag B, 6, 30") {
		t.Errorf("%d %s", b.code, b.text())
	}
	v.Set("stock.lenses[0].label", "bag C")
	b.post("school", v)
	if b.code != http.StatusConflict || b.file("unit.toml") != theirs || b.typed().Get("stock.lenses[0].label") != "bag C" || !strings.Contains(b.text(), "In the file now: bag A, 1, 50, 250; bag B, 6, 30, 20") {
		t.Errorf("%d %s", b.code, b.text())
	}
}

// A unit that is begun on the page has the lists that were typed.
func TestListsOfANewUnit(t *testing.T) {
	b := newBench(t, nil)
	b.r.Folder = func() string { return "" }
	var begun form.Values
	b.r.Begin = func(v form.Values) error { begun = v; return nil }
	b.with("school", "unit.title", "Sky", "school.name", "Elm School", "school.latitude", "46.09", "school.longitude", "-64.77", "school.time_zone", "America/Moncton",
		"term.first_day", "12 April 2027", "term.last_day", "14 May 2027", "stock.balls[1].name", "marble", "stock.balls[1].diameter_mm", "16")
	b.saved("begun")
	if rows := school.StockBalls.Of(begun); len(rows) != 1 || school.BallsName.Of(rows[0]) != "marble" || school.BallsDiameterMM.Of(rows[0]) != 16 {
		t.Errorf("%v", begun)
	}
}

// Each cell has a name of its row and its column.
func TestCellsOfListsAreNamed(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": listsFile})
	b.get("school")
	for _, want := range []string{
		`<th scope="col"><span id="stock-lenses-focal-mm">Focal length</span>`, `<th scope="row" id="stock-lenses-1">Row 2`, `<th scope="row" id="stock-lenses-3">New row`,
		`name="stock.lenses[1].power_dioptres" value="20" autocomplete="off" aria-labelledby="stock-lenses-1 stock-lenses-power-dioptres"`,
	} {
		if !strings.Contains(b.body, want) {
			t.Errorf("no %s", want)
		}
	}
	if strings.Contains(b.body, `id="stock-lenses-4"`) {
		t.Error("more than two rows to add")
	}
}
