//go:build unix && !race

package form_test

import (
	"fmt"
	"strings"
	"syscall"
	"testing"
	"time"

	"noonbook/build/form"
)

// full repeats a line until the text has about as many bytes as are read of such
// a file; # stands for a number that is never the same.
func full(size int, line string) string {
	if !strings.Contains(line, "#") || line[0] == '#' {
		return strings.Repeat(line, (size-1)/len(line))
	}
	var b strings.Builder
	numbered := strings.NewReplacer("#", "%[1]d", "%", "%%").Replace(line)
	for i := 0; b.Len()+len(line)+12 < size; i++ {
		fmt.Fprintf(&b, numbered, i)
	}
	return b.String()
}

// processor returns the processor time that the process has taken.
func processor(t *testing.T) time.Duration {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// Whatever a file of the size that is read holds, it is read within two seconds of
// processor time; the limit is the project's own.
func TestHostileFilesAreQuick(t *testing.T) {
	const limit = 2 * time.Second
	const tomlSize, csvSize = 512 << 10, 1 << 20
	wide := form.Form{}
	for i := range 120 { // as many as unit.toml takes
		wide = append(wide, form.Field{Key: form.Key[float64](fmt.Sprintf("table_%d.quantity_%d_mm", i/10, i)), Required: i%2 == 0})
	}
	wide = append(wide, desk...)
	deep := func(open, middle, shut string) string {
		n := (tomlSize - 20) / (len(open) + len(shut))
		return "a = " + strings.Repeat(open, n) + middle + strings.Repeat(shut, n) + "\n"
	}
	long := strings.Repeat("k", 250<<10)
	for name, text := range map[string]string{
		"lists in lists":                 deep("[", "1", "]"),
		"lists in lists, open":           "a = " + strings.Repeat("[", tomlSize-10),
		"tables in tables":               deep("{a=", "1", "}"),
		"tables in tables, open":         "a = " + strings.Repeat("{a=", tomlSize/3-10),
		"only braces":                    strings.Repeat("{", tomlSize),
		"only brackets":                  strings.Repeat("[", tomlSize),
		"open lists, line by line":       full(tomlSize, "a=[\n"),
		"open tables, line by line":      full(tomlSize, "a={\n"),
		"open lists that look right":     full(tomlSize, "a#=[1\n"),
		"open texts":                     full(tomlSize, "a#=\"\"\"\n"),
		"open single texts":              full(tomlSize, "a#='''x\n"),
		"lists of three in a line":       full(tomlSize, "a=[[[\n"),
		"a dotted key":                   "a" + strings.Repeat(".a", tomlSize/2-8) + " = 1\n",
		"a dotted table":                 "[a" + strings.Repeat(".a", tomlSize/2-8) + "]\n",
		"a dotted key in braces":         "a = {a" + strings.Repeat(".a", tomlSize/2-12) + " = 1}\n",
		"dotted keys at the bound":       full(tomlSize, "a.b.c.d.e.f.g.k# = 1\n"),
		"tables at the bound":            full(tomlSize, "[a.b.c.d.e.f.g.k#]\n"),
		"a long key above short ones":    "[" + long + "]\n" + full(tomlSize/2-10, "a#=1\n"),
		"a long key in braces":           "a = {" + long + " = {" + strings.TrimSuffix(full(tomlSize/2-30, "a#=1,"), ",") + "}}\n",
		"a key at the bound above":       "[" + long[:80] + "." + "]\n[" + long[:80] + "]\n" + full(tomlSize-200, "a#=1\n"),
		"short keys":                     full(tomlSize, "a#=1\n"),
		"unknown keys like a known one":  full(tomlSize, "table_1.quantity_#_mm = 1\n"),
		"one key again and again":        full(tomlSize, "words=1\n"),
		"one table again and again":      full(tomlSize, "[school]\n"),
		"a table and a value":            full(tomlSize, "a#=1\n[a#]\n"),
		"a dotted key and its table":     full(tomlSize, "a#.b=1\n[a#]\n"),
		"values of tables":               full(tomlSize, "[a#]\nb=1\n"),
		"lists of tables":                full(tomlSize, "[[balls]]\n"),
		"lists of tables, of a mistake":  full(tomlSize, "[[balls]]\nname=x\n"),
		"tables in a list":               "balls = [" + full(tomlSize-30, "{},") + "]\n",
		"tables in a list with mistakes": "balls = [" + full(tomlSize-30, "{x=1},") + "]\n",
		"one line of numbers":            "words = [" + full(tomlSize-30, "#,") + "]\n",
		"one line of words":              "words = [" + full(tomlSize-30, "w#,") + "]\n",
		"one line of open texts":         "words = [" + full(tomlSize-30, "\",") + "]\n",
		"one line of commas":             "words = [" + strings.Repeat(",", tomlSize-30) + "]\n",
		"one line without commas":        "words = [" + full(tomlSize-30, "1 ") + "]\n",
		"typographic quotes":             full(tomlSize, "a#=“x”\n"),
		"typographic quotes in a line":   "words = [" + full(tomlSize-30, "“,") + "]\n",
		"degrees and minutes":            full(tomlSize, "school.latitude=46°05'N\n"),
		"wrong dates":                    "term.days_off=[" + full(tomlSize-30, "2027-4-1,") + "]\n",
		"many days":                      "term.days_off=[" + full(tomlSize-30, "2027-04-01,") + "]\n",
		"equals signs":                   strings.Repeat("=", tomlSize),
		"lines of equals signs":          full(tomlSize, "=\n"),
		"quotes":                         strings.Repeat("\"", tomlSize),
		"lines of quotes":                full(tomlSize, "\"\n"),
		"apostrophes":                    full(tomlSize, "a#='\n"),
		"lines of letters":               full(tomlSize, "x\n"),
		"lines of colons":                full(tomlSize, "a: 1\n"),
		"one letter":                     strings.Repeat("x", tomlSize),
		"one word of letters as a value": "school.name = " + strings.Repeat("x", tomlSize-20),
		"one number":                     "school.latitude = " + strings.Repeat("1", tomlSize-20),
		"one number with commas":         "school.latitude = " + full(tomlSize-20, "1,"),
		"a long text for a choice":       "school.paper = \"" + strings.Repeat("A", tomlSize-20) + "\"",
		"a long text for a number":       "school.latitude = \"" + strings.Repeat("1 ", tomlSize/2-20) + "\"",
		"backslashes":                    "school.name = \"" + strings.Repeat("\\", tomlSize-21) + "\"",
		"escapes":                        "school.name = \"" + full(tomlSize-30, "\\u0041") + "\"",
		"line ends behind backslashes":   "school.name = \"\"\"" + full(tomlSize-40, "\\\n") + "\"\"\"",
		"control characters":             full(tomlSize, "a=\x01\n"),
		"nothing but control characters": strings.Repeat("\x01", tomlSize),
		"not UTF-8":                      strings.Repeat("\xff", tomlSize),
		"spaces":                         "a" + strings.Repeat(" ", tomlSize-2),
		"spaces before the value":        "a =" + strings.Repeat(" ", tomlSize-5) + "x",
		"line ends":                      strings.Repeat("\n", tomlSize),
		"comments":                       full(tomlSize, "#\n"),
		"brackets in comments":           full(tomlSize, "a=[ # [\n]\n"),
		"quoted keys":                    full(tomlSize, "\"\\u0061#\"=1\n"),
		"keys with control characters":   full(tomlSize, "\"\\u0001#\"=1\n"),
		"keys with spaces":               full(tomlSize, "a b#=1\n"),
		"open tables that close late":    full(tomlSize/2, "a={b=[\n") + strings.Repeat("]}", tomlSize/16),
		"contradictions of the library":  full(tomlSize, "a.#.b=1\na.#={}\n"),
	} {
		if len(text) > tomlSize || len(text) < tomlSize/3 {
			t.Errorf("%s has %d bytes", name, len(text))
		}
		begin := processor(t)
		_, faults, _ := wide.Read([]byte(text))
		took := processor(t) - begin
		t.Logf("%6d ms  %6d faults  %s", took.Milliseconds(), len(faults), name)
		if took > limit {
			t.Errorf("%s: %v of processor time, want %v at most", name, took, limit)
		}
	}
	log := diary
	log.Max = 1000
	for name, text := range map[string]string{
		"unknown columns":      full(csvSize, "column#,"),
		"columns of one name":  full(csvSize, "seen,"),
		"columns like a name":  full(csvSize, "altitude_dg#,"),
		"empty columns":        strings.Repeat(",", csvSize),
		"semicolons":           strings.Repeat(";", csvSize),
		"lines of nothing":     "seen\n" + full(csvSize-10, "\n"),
		"lines of commas":      "seen,group\n" + full(csvSize-20, ",\n"),
		"lines too wide":       "seen,group\n" + full(csvSize-20, ",,x\n"),
		"one line too wide":    "seen,group\n" + strings.Repeat("x,", csvSize/2-20),
		"wrong words":          "seen,group\n" + full(csvSize-20, "perhaps,\n"),
		"many rows":            "seen,group\n" + full(csvSize-20, "yes,a\n"),
		"one cell":             "seen\n" + strings.Repeat("x", csvSize-20),
		"one quoted cell":      "seen\n\"" + strings.Repeat("x\n", csvSize/2-20) + "\"",
		"an open cell":         "seen\n\"" + strings.Repeat("x\n", csvSize/2-20),
		"quotes":               "seen\n" + strings.Repeat("\"\"", csvSize/2-20),
		"cells with units":     "altitude_deg\n" + full(csvSize-20, "5°\n"),
		"one number of digits": "altitude_deg\n" + strings.Repeat("1", csvSize-20),
	} {
		if len(text) > csvSize || len(text) < csvSize/3 {
			t.Errorf("%s has %d bytes", name, len(text))
		}
		begin := processor(t)
		_, faults := log.ReadRecords([]byte(text))
		took := processor(t) - begin
		t.Logf("%6d ms  %6d faults  CSV: %s", took.Milliseconds(), len(faults), name)
		if took > limit {
			t.Errorf("CSV, %s: %v of processor time, want %v at most", name, took, limit)
		}
	}
}
