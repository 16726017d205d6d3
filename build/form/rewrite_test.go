package form

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"noonbook/compute/place"
)

const (
	rwName  Key[string]         = "school.name"
	rwLat   Key[float64]        = "school.latitude"
	rwZone  Key[*time.Location] = "school.time_zone"
	rwPaper Key[string]         = "school.paper"
	rwCount Key[int]            = "class.pupils"
	rwFlag  Key[bool]           = "class.here"
	rwFirst Key[place.Date]     = "term.first_day"
	rwMonth Key[YearMonth]      = "term.month"
	rwBell  Key[time.Duration]  = "term.bell"
	rwBreak Key[TimeSpan]       = "term.break"
	rwDays  Key[[]string]       = "term.days"
	rwOff   Key[[]place.Date]   = "term.off"
	rwTimes Key[[]TimeSpan]     = "term.times"
	rwBalls Key[[]Values]       = "stock.balls"
	rwSize  Key[float64]        = "stock.size"
	rwLog   Key[Records]        = "records.log"
)

func rewritten() Form {
	return Form{
		{Key: rwName, Required: true}, {Key: rwLat, Unit: "deg", Min: -90, Max: 90}, {Key: rwZone}, {Key: rwPaper, Choices: []string{"A4", "Letter"}},
		{Key: rwCount, Min: 0, Max: 500}, {Key: rwFlag},
		{Key: rwFirst}, {Key: rwMonth}, {Key: rwBell}, {Key: rwBreak}, {Key: rwDays}, {Key: rwOff, Max: 9}, {Key: rwTimes},
		{Key: rwBalls, Max: 9, Fields: Form{{Key: Key[string]("name"), Required: true}, {Key: Key[float64]("size")}, {Key: Key[int]("count"), Default: 1}, {Key: Key[[]TimeSpan]("times")}}}, {Key: rwSize},
		{Key: rwLog, Fields: Form{{Key: Key[string]("who")}}},
	}
}

// Each case shows the text before and after; what is not named stays to the byte.
func TestRewrite(t *testing.T) {
	auckland, err := time.LoadLocation("Pacific/Auckland")
	if err != nil {
		t.Fatal(err)
	}
	spans := func(words ...string) (all []TimeSpan) {
		for _, w := range words {
			v, complaint := Field{Key: rwBreak}.ParseText(w)
			if complaint != "" {
				t.Fatal(complaint)
			}
			all = append(all, v.(TimeSpan))
		}
		return all
	}
	day := func(d int) place.Date { return place.Date{Year: 2028, Month: 2, Day: d} }
	for _, c := range []struct {
		name   string
		before string
		values Values
		after  string
	}{
		{"a value in place", "# top\n[school]\nname = \"A\"   # ours\nlatitude=4 # here\n", Values{"school.name": `Q "B" \`, "school.latitude": -45.87}, "# top\n[school]\nname = \"Q \\\"B\\\" \\\\\"   # ours\nlatitude=-45.87 # here\n"},
		{"the same value as it is written", "[school]\nlatitude = 4.50e0\nname = 'A'\n", Values{"school.name": "A", "school.latitude": 4.5}, "[school]\nlatitude = 4.50e0\nname = 'A'\n"},
		{"line ends and mark of a Windows editor", "\ufeff[school]\r\nname = \"A\"\r\n# paper = \"A4\" # or Letter\r\n", Values{"school.paper": "Letter", "class.pupils": 20}, "\ufeff[school]\r\nname = \"A\"\r\npaper = \"Letter\" # or Letter\r\n\r\n[class]\r\npupils = 20\r\n"},
		{"a commented line", "[school]\n# The paper. A4 or Letter.\n# paper = \"A4\"\n  #name = \"x\"\n[class]\n# paper = \"A4\"\n", Values{"school.paper": "Letter", "school.name": "B"}, "[school]\n# The paper. A4 or Letter.\npaper = \"Letter\"\n  name = \"B\"\n[class]\n# paper = \"A4\"\n"},
		{"words that look like a key", "[school]\n# paper = A4 or Letter\n# paper = \"A4\" or \"Letter\"\nname = \"A\"\n", Values{"school.paper": "A4"}, "[school]\n# paper = A4 or Letter\n# paper = \"A4\" or \"Letter\"\nname = \"A\"\npaper = \"A4\"\n"},
		{"a commented table of the same key", "[stock]\n# [[stock.balls]]\n# size = 3\n\n# size = 4\n", Values{"stock.size": 5.0}, "[stock]\n# [[stock.balls]]\n# size = 3\n\nsize = 5\n"},
		{"below the keys of the table", "[school]\n\tname = \"A\"\n# the end\n\n[class]\n", Values{"school.paper": "A4", "class.here": true}, "[school]\n\tname = \"A\"\n\tpaper = \"A4\"\n# the end\n\n[class]\nhere = true\n"},
		{"not into a list of tables", "[stock]\n[[stock.balls]]\nname = \"a\"\n[[stock.balls]]\nname = \"b\"\n", Values{"stock.size": 2.0}, "[stock]\nsize = 2\n[[stock.balls]]\nname = \"a\"\n[[stock.balls]]\nname = \"b\"\n"},
		{"a new table", "[class]", Values{"class.pupils": 3, "school.time_zone": auckland}, "[class]\npupils = 3\n\n[school]\ntime_zone = \"Pacific/Auckland\"\n"},
		{"nothing yet", "", Values{"school.name": "A"}, "[school]\nname = \"A\"\n"},
		{"dotted keys", "school.name = \"A\"\n# school.paper = \"A4\"\nschool . \"latitude\" = 3\n", Values{"school.latitude": 4.0, "school.paper": "A4", "school.time_zone": auckland}, "school.name = \"A\"\nschool.paper = \"A4\"\nschool . \"latitude\" = 4\nschool.time_zone = \"Pacific/Auckland\"\n"},
		{"a table on one line", "school = { name = \"A\" } # ours\nclass = {}\n", Values{"school.name": "B", "school.paper": "A4", "class.pupils": 2}, "school = { name = \"B\", paper = \"A4\" } # ours\nclass = { pupils = 2 }\n"},
		{"a commented line within a text of many lines", "[school]\nname = \"\"\"\n# paper = \"A4\"\n\"\"\"\n", Values{"school.paper": "A4"}, "[school]\nname = \"\"\"\n# paper = \"A4\"\n\"\"\"\npaper = \"A4\"\n"},
		{"a list on one line", "[term]\noff = [2028-02-01, 2028-02-02,2028-02-03 ] # x\n", Values{"term.off": []place.Date{day(1), day(3), day(4)}}, "[term]\noff = [2028-02-01, 2028-02-03,2028-02-04 ] # x\n"},
		{"a list becomes shorter", "[term]\noff = [2028-02-01, 2028-02-02, 2028-02-03]\n", Values{"term.off": []place.Date{day(1)}}, "[term]\noff = [2028-02-01]\n"},
		{"a list becomes empty", "[term]\noff = [2028-02-01, 2028-02-02] # x\n", Values{"term.off": []place.Date{}}, "[term]\noff = [] # x\n"},
		{"an empty list with a comment", "[term]\noff = [ # none\n]\n", Values{"term.off": []place.Date{day(7)}}, "[term]\noff = [2028-02-07 # none\n]\n"},
		{"a list of many lines", "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"10:00-10:50\", # second\n\t# the long break\n\t\"13:00-13:50\" # last\n]\n", Values{"term.times": spans("9:00-9:50", "13:00-13:50", "14:00-14:50")}, "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"13:00-13:50\", # second\n\t# the long break\n\t\"14:00-14:50\" # last\n]\n"},
		{"an item leaves a list of many lines", "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"10:00-10:50\",\n\t\"13:00-13:50\",\n]\n", Values{"term.times": spans("9:00-9:50", "13:00-13:50")}, "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"13:00-13:50\",\n]\n"},
		{"an item joins a list of many lines", "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"13:00-13:50\" # last\n]\n", Values{"term.times": spans("9:00-9:50", "13:00-13:50", "14:00-14:50")}, "[term]\ntimes = [\n\t\"9:00-9:50\", # first\n\t\"13:00-13:50\", # last\n\t\"14:00-14:50\"\n]\n"},
		{"a faulty value is mended", "[school]\nlatitude = \"north\" # x\n[term]\noff = 5\n", Values{"school.latitude": 3.0, "term.off": []place.Date{day(1)}}, "[school]\nlatitude = 3 # x\n[term]\noff = [2028-02-01]\n"},
		{"a key is commented out", "[term]\nmonth = \"2028-02\" # x\ntimes = [\n  \"9:00-9:50\",\n]\nbell = \"9:00\"\n", Values{"term.times": nil, "term.month": nil, "school.paper": nil}, "[term]\n# month = \"2028-02\" # x\n# times = [\n#   \"9:00-9:50\",\n# ]\nbell = \"9:00\"\n"},
		{"the name of a file", "[records]\nlog = \"a.csv\"\n", Values{"records.log": Records{File: "b.csv"}}, "[records]\nlog = \"b.csv\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := []byte(c.before)
			got, err := rewritten().Rewrite(src, c.values)
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != c.after {
				t.Errorf("got\n%s\nwant\n%s", got, c.after)
			}
			if string(src) != c.before {
				t.Error("the text that was given is changed")
			}
			again, err := rewritten().Rewrite(got, c.values)
			if err != nil || !bytes.Equal(again, got) {
				t.Errorf("a second time: %v\n%s", err, again)
			}
		})
	}
}

func TestRewriteRefuses(t *testing.T) {
	for _, c := range []struct {
		name, before string
		values       Values
		want         string
	}{
		{"what is outside the bounds", "", Values{"school.latitude": 95.0}, "school.latitude 95° is outside −90° to 90°"},
		{"an unknown word", "", Values{"school.paper": "A5"}, `school.paper "A5" is unknown, want "A4" or "Letter"`},
		{"another type", "", Values{"class.pupils": 3.5}, "class.pupils does not take such a value"},
		{"an unknown key", "", Values{"school.nam": "x"}, `school.nam is not a key; did you mean "school.name"?`},
		{"a text with a mistake", "[school]\nname = A\n", Values{"school.paper": "A4"}, "line 2: "},
		{"a key that is a table", "[school.name]\nx = 1\n", Values{"school.name": "A"}, "school.name is a table in the text"},
		{"a control character", "", Values{"school.name": "a\x1bb"}, "school.name holds the control character U+001B; delete it"},
	} {
		got, err := rewritten().Rewrite([]byte(c.before), c.values)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s\n%s", c.name, err, c.want, got)
		}
	}
}

// Many texts, put together from pieces, and values for some of their keys:
// what is read afterwards is what was wanted and otherwise what was there, comments
// are all there in their order, and lines that are no key's are the same bytes.
func TestRewriteOfManyTexts(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	f := rewritten()
	done := 0
	for range 1500 {
		src := someText(random, f)
		_, faults, _ := f.Read(src)
		if _, err := decodeTOML(src); err != nil {
			t.Fatalf("the text is not valid: %v\n%s", err, src)
		}
		want := Values{}
		for range 1 + random.IntN(4) {
			field := f[random.IntN(len(f))]
			if field.Kind() != Tables {
				want[field.Name()] = someValue(random, field)
			}
		}
		got, err := f.Rewrite(src, want)
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		before, _, _ := f.Read(src)
		after, faultsAfter, _ := f.Read(got)
		for name := range maps.Keys(before.With(want)) {
			x, set := want[name]
			if !set {
				x = before[name]
			}
			if !equal(after[name], x) {
				t.Fatalf("%s is %v, want %v\n%s\nof\n%s", name, after[name], x, got, src)
			}
		}
		if len(faultsAfter) > len(faults) {
			t.Fatalf("%v\n%s", faultsAfter, got)
		}
		if a, b := remarks(src), remarks(got); a != b {
			t.Fatalf("remarks\n%q\nbecame\n%q\nin\n%s\nof\n%s", a, b, got, src)
		}
		if n := len(src); n > 0 && src[n-1] != '\n' { // the last line gets an end where one follows
			src = append(src, lineEnd(src)...)
			if got[len(got)-1] != '\n' {
				got = append(got, lineEnd(got)...)
			}
		}
		if a, b := otherLines(src, want), otherLines(got, want); a != b {
			t.Fatalf("other lines\n%q\nbecame\n%q\n%s", a, b, got)
		}
		done++
	}
	t.Logf("%d texts", done)
}

// remarks are the comments that are no key: each has a number of its own.
func remarks(src []byte) string {
	var b strings.Builder
	for line := range bytes.Lines(src) {
		if _, remark, ok := bytes.Cut(line, []byte("#R")); ok {
			b.WriteString(strings.TrimSpace(string(remark)) + " ")
		}
	}
	return b.String()
}

// otherLines are those that hold none of the keys, nor an item of a list, with their
// line ends; and not the empty line above a table that was added.
func otherLines(src []byte, v Values) string {
	var b strings.Builder
	table := ""
	for line := range bytes.SplitAfterSeq(src, []byte("\n")) {
		word := strings.TrimLeft(string(line), " \t#")
		if name, ok := strings.CutPrefix(string(line), "["); ok {
			table, _, _ = strings.Cut(name, "]")
			continue // a table may be added
		}
		key, _, pair := strings.Cut(word, " = ")
		_, set := v[table+"."+key]
		if set || strings.HasPrefix(string(line), "\t") || len(bytes.TrimSpace(line)) == 0 || line[0] == ']' && !pair {
			continue
		}
		b.Write(bytes.TrimRight(line, "\r\n"))
		if bytes.HasSuffix(line, []byte("\r\n")) {
			b.WriteByte('r')
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func someText(random *rand.Rand, f Form) []byte {
	eol := []string{"\n", "\r\n"}[random.IntN(2)]
	var b strings.Builder
	n := 0
	remark := func() string {
		if n++; random.IntN(2) == 0 {
			return ""
		}
		return fmt.Sprintf(" #R%d", n)
	}
	for _, table := range []string{"school", "class", "term", "stock", "records"} {
		if random.IntN(4) == 0 {
			continue
		}
		fmt.Fprintf(&b, "[%s]%s%s", table, remark(), eol)
		for _, field := range f {
			key, ok := strings.CutPrefix(field.Name(), table+".")
			if !ok || field.Kind() == Tables {
				continue
			}
			text, _ := field.Literal(someValue(random, field))
			switch random.IntN(5) {
			case 0:
				fmt.Fprintf(&b, "# %s = %s%s%s", key, text, remark(), eol)
			case 1:
			case 2:
				fmt.Fprintf(&b, "# About %s, #R%d%s%s = %s%s%s", key, 1000+n, eol, key, text, remark(), eol)
			case 3:
				if inner, ok := strings.CutPrefix(text, "["); ok && text != "[]" {
					inner = strings.ReplaceAll(strings.TrimSuffix(inner, "]"), ", ", ","+remark()+eol+"\t")
					if random.IntN(2) == 0 {
						inner += ","
					}
					fmt.Fprintf(&b, "%s = [%s%s\t%s%s%s]%s%s", key, remark(), eol, inner, remark(), eol, remark(), eol)
					break
				}
				fallthrough
			default:
				fmt.Fprintf(&b, "%s = %s%s%s", key, text, remark(), eol)
			}
			if random.IntN(6) == 0 {
				b.WriteString(eol)
			}
		}
		if table == "stock" && random.IntN(2) == 0 {
			fmt.Fprintf(&b, "[[stock.balls]]%sname = \"a\"%s%s# size = 4%s", eol, remark(), eol, eol)
		}
	}
	if random.IntN(3) == 0 {
		return []byte(strings.TrimSuffix(b.String(), eol))
	}
	return []byte(b.String())
}

func someValue(random *rand.Rand, field Field) any {
	day := func() place.Date { return place.Date{Year: 2027, Month: 3, Day: 1 + random.IntN(28)} }
	minutes := func() time.Duration { return time.Duration(random.IntN(600)) * time.Minute }
	span := func() TimeSpan { a := minutes(); return TimeSpan{a, a + time.Minute + minutes()} }
	words := []string{"a", "monday", `"`, `\`, "#", "é 日", "a = b", "[x]", "x\ty", "{}", "'''", `"""`, "tab\nline", "−4"}
	switch field.Kind() {
	case Text:
		if field.Choices != nil {
			return field.Choices[random.IntN(len(field.Choices))]
		}
		return words[random.IntN(len(words))]
	case Number:
		return []float64{0, -1, 46.09, -64.77, 1e-7, 89.999999999999986}[random.IntN(6)]
	case Whole:
		return random.IntN(500)
	case Flag:
		return random.IntN(2) == 0
	case Date:
		return day()
	case Month:
		return YearMonth{place.Date{Year: 2027, Month: time.Month(1 + random.IntN(12)), Day: 1}}
	case Clock:
		return minutes()
	case Span:
		return span()
	case Zone:
		z, _ := time.LoadLocation([]string{"Asia/Kathmandu", "America/Moncton", "UTC"}[random.IntN(3)])
		return z
	case CSV:
		return Records{File: words[random.IntN(2)] + ".csv"}
	}
	n := random.IntN(5)
	switch field.Kind() {
	case Texts:
		list := []string{}
		for range n {
			list = append(list, words[random.IntN(len(words))])
		}
		return list
	case Dates:
		list := []place.Date{}
		for range n {
			list = append(list, day())
		}
		return list
	}
	list := []TimeSpan{}
	for range n {
		list = append(list, span())
	}
	return list
}
