package form

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
)

func ball(name string, size any, more ...any) Values {
	row := Values{"name": name}
	if size != nil {
		row["size"] = size
	}
	for i := 0; i < len(more); i += 2 {
		row[more[i].(string)] = more[i+1]
	}
	return row
}

// Each case shows the text before and after; what is not named stays to the byte.
func TestRewriteTables(t *testing.T) {
	const two = "[stock]\nsize = 2 # cm\n\n# Ours.\n[[stock.balls]]\nname = \"a\" # red\nsize = 3\n\n# Theirs.\n[[stock.balls]]\n# blue\nsize = 4.50\nname = 'b'\n# the end\n\n# Records.\n[records]\n"
	nine := TimeSpan{9 * time.Hour, 10 * time.Hour}
	for _, c := range []struct {
		name, before string
		rows         []Values
		after        string
	}{
		{"the same", two, []Values{ball("a", 3.0), ball("b", 4.5, "count", 1)}, two},
		{"one cell", two, []Values{ball("a", 3.0), ball("b", 5.0)}, strings.Replace(two, "4.50", "5", 1)},
		{"a cell more", two, []Values{ball("a", 3.0, "count", 2), ball("b", 4.5)}, strings.Replace(two, "size = 3\n", "size = 3\ncount = 2\n", 1)},
		{"a cell less", two, []Values{ball("a", nil), ball("b", 4.5)}, strings.Replace(two, "size = 3\n", "# size = 3\n", 1)},
		{"a row more", two, []Values{ball("a", 3.0), ball("b", 4.5), ball("c", nil)}, strings.Replace(two, "# the end\n", "# the end\n\n[[stock.balls]]\nname = \"c\"\n", 1)},
		{"the first row less", two, []Values{ball("b", 4.5)}, strings.Replace(two, "[[stock.balls]]\nname = \"a\" # red\nsize = 3\n", "", 1)},
		{"the last row less", two, []Values{ball("a", 3.0)}, strings.Replace(two, "[[stock.balls]]\n# blue\nsize = 4.50\nname = 'b'\n", "", 1)},
		{"no row", two, nil, strings.NewReplacer("[[stock.balls]]\nname = \"a\" # red\nsize = 3\n", "", "[[stock.balls]]\n# blue\nsize = 4.50\nname = 'b'\n", "").Replace(two)},
		{"a row less and one more", two, []Values{ball("b", 4.5), ball("c", 1.0)}, strings.NewReplacer("[[stock.balls]]\nname = \"a\" # red\nsize = 3\n", "", "# the end\n", "# the end\n\n[[stock.balls]]\nname = \"c\"\nsize = 1\n").Replace(two)},
		{"the first rows", "# Ours.\n[stock]\nsize = 2\n\n# [[stock.balls]]\n#   name = \"x\"\n\n# Records.\n[records]\n", []Values{ball("a", 3.0), ball("b", nil)}, "# Ours.\n[stock]\nsize = 2\n\n# [[stock.balls]]\n#   name = \"x\"\n\n[[stock.balls]]\nname = \"a\"\nsize = 3\n\n[[stock.balls]]\nname = \"b\"\n\n# Records.\n[records]\n"},
		{"the first rows, no empty line", "[stock]\nsize = 2\n# Records.\n[records]\n", []Values{ball("a", nil)}, "[stock]\nsize = 2\n\n[[stock.balls]]\nname = \"a\"\n# Records.\n[records]\n"},
		{"without their table", "[records]\n", []Values{ball("a", nil)}, "[records]\n\n[[stock.balls]]\nname = \"a\"\n"},
		{"without a text", "", []Values{ball("a", nil)}, "[[stock.balls]]\nname = \"a\"\n"},
		{"without a line end", "[stock]\nsize = 2", []Values{ball("a", nil)}, "[stock]\nsize = 2\n\n[[stock.balls]]\nname = \"a\"\n"},
		{"close together, with indents and line ends of Windows", "[[ stock.balls ]]\r\n\tname = \"a\"\r\n[[ stock.balls ]]\r\n\tname = \"b\"", []Values{ball("a", nil), ball("b", 2.0), ball("c", 3.0)}, "[[ stock.balls ]]\r\n\tname = \"a\"\r\n[[ stock.balls ]]\r\n\tname = \"b\"\r\n\tsize = 2\r\n[[stock.balls]]\r\n\tname = \"c\"\r\n\tsize = 3\r\n"},
		{"a key that is commented out goes with its row", "[[stock.balls]]\nname = \"a\"\n# size = 3\n# size as you like\n[[stock.balls]]\nname = \"b\"\n", []Values{ball("b", nil)}, "# size as you like\n[[stock.balls]]\nname = \"b\"\n"},
		{"a list in a row", "[[stock.balls]]\nname = \"a\"\ntimes = [\n\t\"9:00-10:00\", # first\n\t\"11:00-12:00\",\n]\n", []Values{ball("a", nil, "times", []TimeSpan{nine})}, "[[stock.balls]]\nname = \"a\"\ntimes = [\n\t\"9:00-10:00\", # first\n]\n"},
		{"a faulty cell is mended", "[[stock.balls]]\nname = \"a\"\nsize = \"big\" # x\ncount = 1.5\n", []Values{ball("a", 3.0)}, "[[stock.balls]]\nname = \"a\"\nsize = 3 # x\n# count = 1.5\n"},
		{"a key that is unknown stays", "[[stock.balls]]\nname = \"a\"\nmass = 4\n", []Values{ball("a", 3.0)}, "[[stock.balls]]\nname = \"a\"\nmass = 4\nsize = 3\n"},
		{"between brackets and the same", "[stock]\nballs = [{name = \"a\"}, {name = \"b\", size = 2}]\n", []Values{ball("a", nil), ball("b", 2.0)}, "[stock]\nballs = [{name = \"a\"}, {name = \"b\", size = 2}]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := Values{"stock.balls": c.rows}
			got, err := rewritten().Rewrite([]byte(c.before), want)
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != c.after {
				t.Errorf("got\n%s\nwant\n%s", got, c.after)
			}
			again, err := rewritten().Rewrite(got, want)
			if err != nil || !bytes.Equal(again, got) {
				t.Errorf("a second time: %v\n%s", err, again)
			}
		})
	}
}

func TestRewriteRefusesTables(t *testing.T) {
	for _, c := range []struct {
		name, before string
		rows         []Values
		want         string
	}{
		{"between brackets", "[stock]\nballs = [{name = \"a\"}]\n", []Values{ball("b", nil)}, "stock.balls is written between brackets; change it there with a text editor"},
		{"empty brackets", "[stock]\nballs = []\n", []Values{ball("b", nil)}, "stock.balls is written between brackets"},
		{"brackets in a table on one line", "stock = {balls = [{name = \"a\"}]}\n", nil, "stock.balls is written between brackets"},
		{"a table on one line", "stock = {size = 3}\n", []Values{ball("b", nil)}, "stock.balls belongs to a table on one line; write it there with a text editor"},
		{"a row with a table", "[[stock.balls]]\nname = \"a\"\n[stock.balls.more]\nx = 1\n", []Values{ball("b", nil)}, "stock.balls is written in a way of its own"},
		{"no list", "[stock]\nballs = 3\n", []Values{ball("b", nil)}, "stock.balls is written between brackets"},
		{"a key that must be there", "", []Values{{"size": 3.0}}, "stock.balls row 1: name is missing: a text in quotes"},
		{"another type", "", []Values{ball("a", "big")}, "stock.balls row 1: size does not take such a value"},
		{"an unknown key", "", []Values{ball("a", nil, "siz", 3.0)}, `stock.balls row 1: siz is not a key; did you mean "size"?`},
		{"too many", "", slices.Repeat([]Values{ball("a", nil)}, 10), "stock.balls has 10 tables; up to 9 are taken"},
	} {
		got, err := rewritten().Rewrite([]byte(c.before), Values{"stock.balls": c.rows})
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s\n%s", c.name, err, c.want, got)
		}
	}
}

// Many texts with a list, and rows that are wanted of it: what is read is what was
// wanted, rows that stay keep each byte, and so does each line that is in no row.
func TestRewriteOfManyTables(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	f := rewritten()
	list, _ := f.Field("stock.balls")
	n := 0
	someRow := func() Values {
		n++
		row := Values{"name": fmt.Sprintf("ball %d", n)}
		for _, cell := range list.Fields[1:] {
			if random.IntN(2) == 0 {
				row[cell.Name()] = someValue(random, cell)
			}
		}
		return row
	}
	kept, changed, fresh, gone := 0, 0, 0, 0
	for range 1500 {
		eol := []string{"\n", "\r\n"}[random.IntN(2)]
		remark := func() string {
			if n++; random.IntN(2) == 0 {
				return ""
			}
			return fmt.Sprintf(" #R%d", n)
		}
		var text strings.Builder
		line := func(s string) { text.WriteString(s + eol) }
		if random.IntN(2) == 0 {
			line("[stock]" + remark())
			line("size = 3" + remark())
			line("")
		}
		line("# [[stock.balls]]")
		line("#   name = \"an example\"")
		var was []Values
		var blocks []string
		for range random.IntN(5) {
			for range random.IntN(3) {
				line([]string{"", "# R above", "# [[stock.balls]]"}[random.IntN(3)])
			}
			from := text.Len()
			row := someRow()
			line("[[stock.balls]]" + remark())
			cells := slices.Clone(list.Fields)
			random.Shuffle(len(cells), func(i, j int) { cells[i], cells[j] = cells[j], cells[i] })
			for _, cell := range cells {
				if s, ok := cell.Literal(row[cell.Name()]); ok {
					if random.IntN(4) == 0 {
						line("# R between")
					}
					line(cell.Name() + " = " + s + remark())
				}
			}
			was, blocks = append(was, row), append(blocks, text.String()[from:])
		}
		if random.IntN(2) == 0 {
			line("")
			line("# R below")
			line("[records]")
			line("log = \"a.csv\"")
		}
		src := text.String()
		if random.IntN(3) == 0 {
			src = strings.TrimSuffix(src, eol)
		}

		var want []Values
		var stays []string // the blocks of rows that stay as they are
		for i, row := range was {
			switch random.IntN(4) {
			case 0:
				gone++
			case 1:
				cell := list.Fields[1+random.IntN(len(list.Fields)-1)]
				row = row.With(Values{cell.Name(): someValue(random, cell)})
				if random.IntN(3) == 0 {
					delete(row, cell.Name())
				}
				want = append(want, row)
				changed++
			default:
				want, stays = append(want, row), append(stays, strings.TrimRight(blocks[i], "\r\n"))
				kept++
			}
		}
		for range random.IntN(3) {
			want = append(want, someRow())
			fresh++
		}
		got, err := f.Rewrite([]byte(src), Values{"stock.balls": want})
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		read, faults, _ := f.Read(got)
		rows, _ := read["stock.balls"].([]Values)
		_, faultsBefore, _ := f.Read([]byte(src))
		if len(faults) != len(faultsBefore) || !list.Fields.same(rows, want) {
			t.Fatalf("%v, rows %v, want %v\n%s\nof\n%s", faults, rows, want, got, src)
		}
		rest := string(got)
		for _, block := range stays {
			_, after, ok := strings.Cut(rest, block)
			if !ok {
				t.Fatalf("the row\n%s\nis gone or moved\n%s\nof\n%s", block, got, src)
			}
			rest = after
		}
		if a, b := outside(src), outside(string(got)); a != b {
			t.Fatalf("lines outside rows\n%s\nbecame\n%s\nin\n%s\nof\n%s", a, b, got, src)
		}
		if eol == "\r\n" && strings.Count(string(got), "\n") != strings.Count(string(got), "\r\n") {
			t.Fatalf("line ends\n%q", got)
		}
	}
	t.Logf("%d rows kept, %d changed, %d new, %d gone", kept, changed, fresh, gone)
	if kept < 500 || changed < 300 || fresh < 500 || gone < 300 {
		t.Error("too little is tried")
	}
}

// outside are the lines that are in no row, without empty ones.
func outside(src string) string {
	var b strings.Builder
	in := false
	for line := range strings.Lines(src) {
		word := strings.TrimRight(line, "\r\n")
		switch {
		case strings.HasPrefix(word, "[["):
			in = true
			continue
		case strings.HasPrefix(word, "["), word == "", word == "# R above", word == "# R below":
			in = false
		}
		if !in && word != "" && word != "# [[stock.balls]]" {
			b.WriteString(word + "\n")
		}
	}
	return b.String()
}
