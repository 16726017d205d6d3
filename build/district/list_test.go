package district

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/build/school"
)

const ofAll = "[unit]\ntitle = \"Sky\"\n[school]\ntime_zone = \"America/Moncton\"\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-05-21\n"

// districtOf reads a list beside a unit.toml.
func districtOf(t *testing.T, toml, list string) (*District, problem.List) {
	t.Helper()
	l, problems := ReadList("schools.csv", []byte(list))
	if l == nil {
		return nil, problems
	}
	d, problems, err := New(Unit{Folder: fstest.MapFS{"unit.toml": {Data: []byte(toml)}}, Root: "unit", Catalogue: placeholder.Catalogue()}, l)
	if err != nil {
		t.Fatal(err)
	}
	return d, problems
}

// proofOf is what is wrong with a list, a line for each problem.
func proofOf(t *testing.T, toml, list string) string {
	t.Helper()
	d, problems := districtOf(t, toml, list)
	if d != nil {
		tally, err := d.Proof()
		if err != nil {
			t.Fatal(err)
		}
		problems = tally.Problems
	}
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	return strings.Join(lines, "\n")
}

// However a spreadsheet writes a list, it says the same.
func TestListsAreReadAsSpreadsheetsWriteThem(t *testing.T) {
	const plain = "school.name,school.latitude,school.longitude,term.days_off,term.lesson_times,town\n" +
		"\"Hill, North\",46.1,-64.8,2027-04-30; 2027-05-17,9:10-10:00; 13:00-13:50,Sackville\nDale,45.9,-64.4,,,\n"
	for name, list := range map[string]string{
		"plain":             plain,
		"byte order mark":   "\ufeff" + plain,
		"CRLF":              strings.ReplaceAll(plain, "\n", "\r\n"),
		"CR":                strings.ReplaceAll(plain, "\n", "\r"),
		"no last line end":  strings.TrimSuffix(plain, "\n"),
		"empty rows":        strings.ReplaceAll(plain, "\nDale", "\n,,,,,\n\nDale") + ",,,,,\n",
		"empty columns":     strings.ReplaceAll(plain, "\n", ",,\n"),
		"space round heads": strings.ReplaceAll(plain, ",school.longitude", ", school.longitude\u00a0"),
		"semicolons and decimal commas": "school.name;school.latitude;school.longitude;term.days_off;term.lesson_times;town\n" +
			"Hill, North;46,1;-64,8;\"2027-04-30; 2027-05-17\";\"9:10-10:00; 13:00-13:50\";Sackville\nDale;45,9;-64,4;;;\n",
		"tabs":                  "school.name\tschool.latitude\tschool.longitude\tterm.days_off\tterm.lesson_times\ttown\nHill, North\t46.1\t−64.8\t2027-04-30, 2027-05-17\t9:10-10:00, 13:00-13:50\tSackville\nDale\t45.9\t-64.4\t\t\t\n",
		"places with sides":     strings.ReplaceAll(plain, "46.1,-64.8", "46.1°N,64.8° W"),
		"columns in any order":  "town,school.longitude,school.latitude,term.lesson_times,school.name,term.days_off\nSackville,-64.8,46.1,9:10-10:00; 13:00-13:50,\"Hill, North\",2027-04-30; 2027-05-17\n,-64.4,45.9,,Dale,\n",
		"heads in quotes":       strings.Replace(plain, "school.name,school.latitude", `"school.name","school.latitude"`, 1),
		"dates as people write": strings.Replace(plain, "2027-04-30; 2027-05-17", "30 April 2027; 17 May 2027", 1),
	} {
		d, problems := districtOf(t, ofAll, list)
		if d == nil {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		if d.list.Len() != 2 {
			t.Errorf("%s: %d schools", name, d.list.Len())
			continue
		}
		_, one, found, err := d.checked(&d.list.rows[0])
		_, two, others, failed := d.checked(&d.list.rows[1])
		if err != nil || failed != nil || len(found)+len(others) > 0 {
			t.Errorf("%s: %v %v %v", name, found, others, err)
			continue
		}
		if school.Name.Of(one) != "Hill, North" || school.Latitude.Of(one) != 46.1 || school.Longitude.Of(one) != -64.8 || len(school.TermDaysOff.Of(one)) != 2 || len(school.TermLessonTimes.Of(one)) != 2 {
			t.Errorf("%s: %v", name, one)
		}
		if school.Name.Of(two) != "Dale" || len(school.TermDaysOff.Of(two)) != 0 || school.TimeZone.Of(two).String() != "America/Moncton" {
			t.Errorf("%s: %v", name, two)
		}
		if a, b := d.list.rows[0].folder, d.list.rows[1].folder; a != "hill-north" || b != "dale" {
			t.Errorf("%s: the folders are %q and %q", name, a, b)
		}
	}
}

// Each mistake is told once, with the place of its cell.
func TestMistakesInLists(t *testing.T) {
	const head = "school.name,school.latitude,school.longitude\n"
	for _, c := range []struct{ name, list, want string }{
		{"empty", "", "schools.csv:1:1: the list is empty; its first line has the names of columns, such as school.name, school.latitude and school.longitude"},
		{"no school", head, "schools.csv:1:1: the list has no school; each line below the first is one"},
		{"not UTF-8", head + "\xc9cole,46,-64\n", "schools.csv:2:1: byte 0xc9 is not UTF-8; save the list as CSV with the encoding UTF-8"},
		{"unknown head", "school.name,school.lattitude,school.longitude\nA,46,-64\n", `schools.csv:1:13: the head "school.lattitude" is not a key of unit.toml; did you mean "school.latitude"?`},
		{"unknown head far from all", "school.name,headteacher\nA,B\n", `schools.csv:1:13: the head "headteacher" is not a key of unit.toml; a head is a key of unit.toml such as school.latitude, or folder or town`},
		{"head twice", "school.name,school.name\nA,B\n", "schools.csv:1:13: the column school.name is there twice"},
		{"tables", "school.name,stock.lenses\nA,B\n", "schools.csv:1:13: stock.lenses is a list of tables, which no cell can hold; write it in unit.toml, for all schools alike"},
		{"open quote", head + "\"A,46,-64\n", `schools.csv:2:1: from here on the list cannot be read: extraneous or missing " in quoted-field in line 2, column 11; a cell that holds a quote is in quotes, and the quote is doubled`},
		{"too few cells", head + "A,46\n", "schools.csv:2:3: the row has 2 cells, and there are 3 heads; leave a cell empty, but do not leave it out"},
		{"too many cells", head + "A,46,1,-64\n", `schools.csv:2:8: the row has 4 cells, and there are 3 heads; put a cell that holds "," in quotes`},
		{"no head above", "school.name,school.latitude,school.longitude,\nA,46,-64.8,x\n", `schools.csv:2:12: "x" has no head above it`},
		{"formula", head + "A,=B1+1,-64.8\n", "schools.csv:2:3: school.latitude is the formula =B1+1; let the spreadsheet write what comes of it"},
		{"undone sum", head + "#REF!,46,-64.8\n", "schools.csv:2:1: school.name is #REF!, a sum that the spreadsheet could not do"},
		{"outside", head + "A,95,-64.8\n", "schools.csv:2:3: school.latitude 95° is outside −90° to 90°"},
		{"missing", head + "A,,-64.8\n", "schools.csv:2:3: school.latitude is missing: a number from −90° to 90°; neither the row nor unit.toml has it"},
		{"doubtful place", head + "A,46,64.8\n", "schools.csv:2:6: warning: school.longitude: the Sun's noon is at 4:42 by the clock of America/Moncton here; with longitude -64.8° it would be at 13:20; is the sign of the longitude wrong?"},
		{"term that ends before it begins", "school.name,school.latitude,school.longitude,term.last_day\nA,46,-64.8,2027-03-01\n", "schools.csv:2:12: term.last_day 2027-03-01 is before term.first_day 2027-04-12"},
		{"term of unit.toml", "school.name,school.latitude,school.longitude,term.first_day\nA,46,-64.8,2027-06-01\n", "unit/unit.toml:7:12: term.last_day 2027-05-21 is before term.first_day 2027-06-01 (at A, schools.csv:2)"},
		{"a way without its length", "school.name,school.latitude,school.longitude,school.way_to\nA,46,-64.8,Halifax\n", "schools.csv:2:12: school.way_to goes with school.way_km, which is missing"},
		{"a way that cannot be", "school.name,school.latitude,school.longitude,school.way_to,school.way_km\nA,46,-64.8,Halifax,0\n", "schools.csv:2:20: school.way_km 0 km is outside 1 km to 20000 km"},
		{"item of a list", "school.name,school.latitude,school.longitude,term.lesson_times\nA,46,-64.8,9:00-10:00; 9:30-10:30\n", "schools.csv:2:12: term.lesson_times: this one begins before the one before it ends"},
		{"one folder twice", head + "A school,46,-64.8\nÀ School!,47,-64.8\n", "schools.csv:3:1: the folder a-school would be that of line 2 too; name both in a column folder"},
		{"folder of staff", "folder," + head + "a,A,46,-64.8\na-staff,B,46,-64.8\n", "schools.csv:3:1: the folder a-staff is in the way of that of line 2; each school has one of its own, and may have a-staff-staff beside it"},
		{"folder that leads away", "folder," + head + "../a,A,46,-64.8\n", `schools.csv:2:1: folder: the file name "../a" begins with a dot, which hides a file on many computers`},
		{"folder of a file", "folder," + head + "a.zip,A,46,-64.8\n", "schools.csv:2:1: folder a.zip ends as a file does; leave out .zip"},
		{"folder of the page", head + "Index,46,-64.8\n", "schools.csv:2:1: the folder index would be in the way of the board's page; name another in a column folder"},
		{"no letters of ours", head + "学校,46,-64.8\n", "schools.csv:2:1: no folder can be named after this school; name one in a column folder"},
		{"device", head + "Aux,46,-64.8\n", "schools.csv:2:1: the folder aux… would have a name that not every computer takes; name another in a column folder"},
	} {
		if got := proofOf(t, ofAll, c.list); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
	if got, want := proofOf(t, strings.Replace(ofAll, "title", "summary", 1), head+"A,46,-64.8\n"), "unit/unit.toml:1:1: unit.title is missing: a text in quotes; the list has no column for it either"; got != want {
		t.Errorf("of what both lack it says %s", got)
	}
	if got, want := proofOf(t, strings.Replace(ofAll, "time_zone", "time_zoon", 1), head+"A,46,-64.8\n"), `unit/unit.toml:4:1: school.time_zoon is not a key; did you mean "school.time_zone"?`; got != want {
		t.Errorf("of unit.toml it says %s", got)
	}
}

// The names of folders are plain everywhere.
// A way that unit.toml knows begins at its own school: a row with a place of its own has
// that which it says itself, or none.
func TestWayOfARow(t *testing.T) {
	toml := strings.Replace(ofAll, "[school]\n", "[school]\nway_to = \"Halifax\"\nway_km = 185\n", 1)
	d, problems := districtOf(t, toml, "school.name,school.latitude,school.longitude,school.way_to,school.way_km\n"+
		"A,46,-64.8,,\nB,46,-64.8,the harbour,12\nC,,,,\n")
	if d == nil {
		t.Fatal(problems)
	}
	for i, want := range []string{"", "the harbour", "Halifax"} {
		given, _ := d.given(&d.list.rows[i])
		if got := school.WayTo.Of(given.Values); got != want || school.WayKm.In(given.Values) != (want != "") {
			t.Errorf("row %d has the way to %q, want %q", i+1, got, want)
		}
	}
}

func TestPlainName(t *testing.T) {
	for name, want := range map[string]string{
		"École de l'Étang–Salé": "ecole-de-letang-sale", "St. Mary’s  (Upper) School": "st-marys-upper-school",
		"Måkeberget skole": "makeberget-skole", "Rognebærbakken": "rognebaerbakken", "Øvre Straße 7": "ovre-strasse-7", "Whangārei": "whangarei", "--": "",
	} {
		if got := plainName(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
}

// Parts are shares of the list: each row is in one of them.
func TestParts(t *testing.T) {
	for _, rows := range []int{0, 1, 5, 16, 200, 100_001} {
		for _, n := range []int{1, 2, 3, 16, 1000} {
			next := 0
			for k := 1; k <= n; k++ {
				from, to := Part{k, n}.of(rows)
				if from != next || to < from || to-from > rows/n+1 {
					t.Fatalf("part %d/%d of %d rows is %d to %d after %d", k, n, rows, from, to, next)
				}
				next = to
			}
			if next != rows {
				t.Errorf("%d parts of %d rows end at %d", n, rows, next)
			}
		}
	}
}
