package source_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// unitOf reads lessons beside sound settings.
func unitOf(t *testing.T, files map[string]string) (*source.Unit, problem.List) {
	t.Helper()
	folder := fstest.MapFS{"unit.toml": {Data: []byte(settings)}}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	unit, problems, err := source.Read(folder, "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	return unit, problems
}

const carried = "a handbook carries along pictures (.svg, .png, .jpg, .gif, .webp), .pdf, .csv, .txt, and sound or film (.mp3, .ogg, .wav, .m4a, .mp4, .webm)"

const head = "```lesson\ntitle = \"A\"\n```\n" // the text begins on line 4

// What a lesson may hold and what not, at the bounds: each case gives exactly
// these problems, with their places.
func TestRulesOfALesson(t *testing.T) {
	quotes := func(n int) string { return strings.Repeat("> ", n) + "x\n" }
	svg := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`
	sized := func(n int) string { return head + strings.Repeat("some words\n\n", n/12)[:n-len(head)] }
	for _, c := range []struct {
		name  string
		files map[string]string
		want  []string
	}{
		{"lessons and minutes", map[string]string{"a.md": "```lesson\ntitle = \"A\"\nminutes = 100\nlessons = 2\n```\n"}, []string{"u/a.md:4:11: lesson: lessons does not go with minutes; leave one of them out"}},
		{"no lines", map[string]string{"a.md": head + "```answer lines=0\nx\n```\n"}, nil},
		{"forty lines", map[string]string{"a.md": head + "```answer lines=40\nx\n```\n"}, nil},
		{"forty-one lines", map[string]string{"a.md": head + "```answer lines=41\nx\n```\n"}, []string{`u/a.md:4:11: answer: "lines=41" is not understood, want lines=N with N from 0 to 40`}},
		{"fewer than no lines", map[string]string{"a.md": head + "~~~~answer lines=-1\nx\n~~~~\n"}, []string{`u/a.md:4:12: answer: "lines=-1" is not understood, want lines=N with N from 0 to 40`}},
		{"lines of a caution", map[string]string{"a.md": head + "```caution lines=2\nx\n```\n"}, []string{`u/a.md:4:12: caution: "lines=2" is not the name of a caution; want one of ` + strings.Join(entry.Cautions(), ", ")}},
		{"a caution on its first line", map[string]string{"a.md": head + "```caution never look at it\n```\n"}, []string{`u/a.md:4:12: caution: "never" is not the name of a caution; want one of ` + strings.Join(entry.Cautions(), ", ")}},
		{"a caution misspelt", map[string]string{"a.md": head + "```caution sun scisors\n```\n"}, []string{`u/a.md:4:16: caution: "scisors" is not the name of a caution; did you mean "scissors"?`}},
		{"a caution twice", map[string]string{"a.md": head + "~~~caution sun  sun\nx\n~~~\n"}, []string{`u/a.md:4:17: caution: "sun" is named twice`}},
		{"a caution of nothing", map[string]string{"a.md": head + "```caution\n\n```\n"}, []string{`u/a.md:4:1: caution: the block is empty; write what to take care of, or name a caution after the word, such as "caution sun"`}},
		{"a caution with numbers of the school", map[string]string{"a.md": head + "```caution clear-zone\n```\n"}, []string{`u/a.md:4:12: caution: "clear-zone" has numbers of the school; put the compute block that prints it before the step, or write the caution here`}},
		{"cautions by their names", map[string]string{"a.md": head + "```caution sun scissors\n```\n\n```caution clear-zone\nStay out.\n```\n"}, nil},
		{"a hundred quotes", map[string]string{"a.md": head + quotes(100)}, nil},
		{"a hundred and one", map[string]string{"a.md": head + "\n" + quotes(101)}, []string{"u/a.md:5:1: quotes and lists within one another, more than 100 deep"}},
		{"512 kB", map[string]string{"a.md": sized(512 << 10)}, nil},
		{"a byte more", map[string]string{"a.md": sized(512<<10 + 1)}, []string{"u/a.md: the file has 512 kB; up to 512 kB are read"}},
		{"a closed block", map[string]string{"a.md": head + "````caution\n```\nx\n```\n````\n"}, nil},
		{"a block closed too short", map[string]string{"a.md": head + "\n````caution\nx\n```\n"}, []string{"u/a.md:5:1: the caution block is never closed; end it with a line of ````", "u/a.md:7:1: the block is never closed; end it with a line of ```"}},
		{"a block that its quote ends", map[string]string{"a.md": head + "> ~~~staff\n> x\n\ny\n"}, []string{"u/a.md:4:3: the staff block is never closed; end it with a line of ~~~"}},

		{"an expression of 499 bytes", map[string]string{"a.md": head + "{class-facts.school school.name=\"" + strings.Repeat("x", 499-len("{class-facts.school school.name=\"\"}")) + "\"}\n"}, nil},
		{"a brace in quotes", map[string]string{"a.md": head + "{class-facts.school school.name=\"a } b\"}\n"}, nil},
		{"a brace that goes on below", map[string]string{"a.md": head + "ab {sun-day.noon\ndate=2027-04-20}\n"}, []string{`u/a.md:4:4: a brace that is not closed on its line; write \{ for the brace itself`}},
		{"an escaped brace", map[string]string{"a.md": head + "\\{sun-day.noon\\} `{x}`\n"}, nil},
		{"two of one value", map[string]string{"a.md": head + "x {sun-day.noon date=}\n"}, []string{`u/a.md:4:17: sun-day: date is "", want a date such as 2027-04-20, or a day by name such as "next full Moon"`}},
		{"a word without a value", map[string]string{"a.md": head + "x {sun-day.noon date}\n"}, []string{`u/a.md:4:4: {sun-day.noon date} is not of the form {name.fact key=value}; write \{ for the brace itself`}},
		{"a placeholder in an alternative text", map[string]string{"a.md": head + "x ![at {sun-day.noon}](l.svg)\n", "l.svg": svg}, []string{"u/a.md:4:8: a picture's alternative text cannot hold a placeholder; put it below the picture"}},
		{"a placeholder in a target", map[string]string{"a.md": head + "x [y](z.md#{sun-day.noon})\n"}, []string{"u/a.md:4:3: a placeholder cannot stand in a link's target or title"}},
		{"a placeholder in a link's title", map[string]string{"a.md": head + "x [y](b.md \"at {sun-day.noon}\")\n", "b.md": head}, []string{"u/a.md:4:3: a placeholder cannot stand in a link's target or title"}},
		{"a placeholder in a title", map[string]string{"a.md": "```lesson\ntitle = \"{sun-day.noon}\"\n```\n"}, []string{"u/a.md:2:9: lesson: title holds a placeholder; placeholders stand in the text of the lesson, and facts for the margin in glance"}},
		{"an argument in a block's line", map[string]string{"a.md": head + "```compute sun-day date=2027-04-20\n```\n"}, []string{`u/a.md:4:12: compute sun-day: "date=2027-04-20" is too much; arguments stand in the block, one a line`}},
		{"a block without a name", map[string]string{"a.md": head + "```compute\n```\n"}, []string{"u/a.md:4:4: compute needs the name of a placeholder, such as dial-table"}},
		{"code of another language", map[string]string{"a.md": head + "```python\n{x}\n```\n"}, nil},

		{"links that may be", map[string]string{"a.md": head + "[a](https://example.org) [b](http://example.org/x.md) [c](mailto:a@example.org) <a@example.org> [d](b.md) [e](b.md#part) [f](#here) [g](l.svg)\n\n## Here\n", "b.md": head + "## Part\n", "l.svg": svg}, nil},
		{"a script", map[string]string{"a.md": head + "x [y](javascript:z)\n"}, []string{"u/a.md:4:3: link javascript:z is not a web address, a mail address or a file of the content folder"}},
		{"a file of the machine", map[string]string{"a.md": head + "x [y](file:///etc/passwd)\n"}, []string{"u/a.md:4:3: link file:///etc/passwd is not a web address, a mail address or a file of the content folder"}},
		{"a picture of the web", map[string]string{"a.md": head + "x ![y](https://example.org/z.png)\n"}, []string{"u/a.md:4:3: picture https://example.org/z.png is not in the content folder; a handbook loads nothing from the network"}},
		{"a picture of the web without a scheme", map[string]string{"a.md": head + "x ![y](//example.org/z.png)\n"}, []string{"u/a.md:4:3: picture //example.org/z.png is not in the content folder; a handbook loads nothing from the network"}},
		{"outside", map[string]string{"c/a.md": head + "x [y](../../z.svg) [in](../l.svg)\n", "l.svg": svg}, []string{"u/c/a.md:4:3: ../../z.svg leads outside the content folder"}},
		{"from the root", map[string]string{"a.md": head + "x [y](/l.svg)\n", "l.svg": svg}, []string{"u/a.md:4:3: /l.svg leads outside the content folder; want a path from the lesson's folder"}},
		{"no such heading", map[string]string{"a.md": head + "x [y](#the-shaddow)\n\n## The shadow\n"}, []string{`u/a.md:4:3: u/a.md has no heading #the-shaddow; did you mean "the-shadow"?`}},
		{"no such heading there", map[string]string{"a.md": head + "x [y](b.md#pert)\n", "b.md": head + "## Part\n"}, []string{`u/a.md:4:3: u/b.md has no heading #pert; did you mean "part"?`}},
		{"no such lesson", map[string]string{"a.md": head + "x [y](bb.md)\n", "b.md": head}, []string{`u/a.md:4:3: lesson bb.md is not in the content folder; did you mean "b.md"?`}},
		{"a folder", map[string]string{"a.md": head + "x [y](art)\n", "art/l.svg": svg}, []string{"u/a.md:4:3: file art is not a file"}},
		{"a kind that could run", map[string]string{"a.md": head + "x [y](noonbook.js) [z](page.html)\n", "noonbook.js": "x", "page.html": "x"}, []string{"u/a.md:4:3: file noonbook.js: files of this kind are not carried along; " + carried, "u/a.md:4:20: file page.html: files of this kind are not carried along; " + carried}},
		{"two files of one name", map[string]string{"a.md": head + "x [y](art/l.svg) [z](art-l.svg)\n", "art/l.svg": svg, "art-l.svg": svg}, []string{"u/a.md:4:18: art/l.svg and art-l.svg would both be art-l.svg in the handbook"}},
		{"one file twice", map[string]string{"a.md": head + "![y](art/l.svg) ![z](art/l.svg)\n", "art/l.svg": svg}, nil},
		{"a picture without a size", map[string]string{"a.md": head + "x ![y](l.svg)\n", "l.svg": "<svg/>"}, []string{"u/a.md:4:3: warning: picture l.svg tells no size that can be read (PNG, JPEG, GIF and SVG do), so the page moves while it loads"}},

		{"the name of the cover", map[string]string{"3-index.md": head}, []string{"u/3-index.md:1:1: index is the name of the cover; give the file another name"}},
		{"two of one page", map[string]string{"1-a.md": head, "2-A.md": head}, []string{"u/2-A.md:1:1: two lessons would be the page a.html: u/1-a.md is the other"}},
		{"the name of a pupils' sheet", map[string]string{"1-moon.md": head, "2-pupil-moon.md": head}, []string{"u/2-pupil-moon.md:1:1: pupil-moon.html is the name of a sheet of u/1-moon.md; give the file another name"}},
		{"the name of no sheet of a page", map[string]string{"1-moon.md": "```lesson\ntitle = \"A\"\npart = \"page\"\n```\n", "2-pupil-moon.md": head}, nil},
		{"follows a page", map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\npart = \"page\"\n```\n", "2-b.md": "```lesson\ntitle = \"B\"\nfollows = \"1-a.md\"\n```\n"}, []string{`u/2-b.md:3:11: lesson: follows ties lessons, and a page is none; want part = "lesson" in both`}},
		{"follows itself", map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nfollows = \"1-a.md\"\n```\n"}, []string{`u/1-a.md:3:11: lesson: follows wants a lesson before this one, and "A" is not`}},
		{"changes with itself", map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nchange_with = \"1-a.md\"\n```\n"}, []string{`u/1-a.md:3:15: lesson: change_with wants a lesson after this one, and "A" is not`}},
		{"a hidden folder", map[string]string{"a.md": head, ".trash/b.md": "no lesson"}, nil},
		{"another ending", map[string]string{"a.MD": head, "b.txt": "no lesson", "c.markdown": "no lesson"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := unitOf(t, c.files)
			var got []string
			for _, p := range problems {
				got = append(got, p.Error())
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.want, "\n"))
			}
		})
	}
}

// An expression as long as the bound is not read to its end.
func TestExpressionsAreBounded(t *testing.T) {
	_, problems := unitOf(t, map[string]string{"a.md": head + "{class-facts.school school.name=\"" + strings.Repeat("x", 600) + "\"}\n"})
	if want := `u/a.md:4:1: a brace that is not closed on its line; write \{ for the brace itself`; len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("got %v", problems)
	}
}

// Every key of a lesson block that the calendar and the lists use arrives there.
func TestTaught(t *testing.T) {
	unit, problems := unitOf(t, map[string]string{
		"1-first.md": head,
		"2-plain.md": "```lesson\ntitle = \"Plain\"\n```\n",
		"3-full.md": "```lesson\ntitle = \"Full\"\ndate = 2027-04-20\nstart = \"13:30\"\nminutes = 75\nvisits = 2\nneeds = [\"dry\", \"sun\", \"moon\", \"dark\"]\nsun_height_deg = 25\noutside_minutes = 20\n" +
			"dark_by = \"21:15\"\nhourly_marks = \"9:00-14:30\"\nfollows = \"1-first.md\"\ndays_after = 3\ndays_within = 9\nsame_clock = true\nif_wet = \"change\"\nchange_with = \"4-last.md\"\n" +
			"question = \"Why?\"\ngoals = [\"draw\", \"tell why\"]\nevidence = [\"the drawing\"]\ncodes = [\"S 6.1\", \"M 6.4\"]\nabsent = \"Draw at home.\"\n" +
			"kit = [{ item = \"card\", count = 0.5, each = \"group\", spare = 3, source = \"buy\", used_up = true, price = 4.5, pack = 10 }, { item = \"lamp\" }, { item = \"jar\", each = \"pupil\", source = \"home\" }]\n```\n",
		"4-last.md":  "```lesson\ntitle = \"Last\"\nsummary = \"The last.\"\nneeds = [\"sun\"]\nif_wet = \"keep\"\n```\n",
		"5-in.md":    "```lesson\ntitle = \"In\"\nneeds = [\"dry\"]\nif_wet = \"inside\"\n```\n",
		"6-later.md": "```lesson\ntitle = \"Later\"\nneeds = [\"dry\"]\nif_wet = \"later\"\n```\n",
		"7-page.md":  "```lesson\ntitle = \"No lesson\"\npart = \"page\"\n```\n",
	})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	got := unit.Taught()
	ten := quantity.Degrees(10) // what the block's own words promise: "10°, which clears most roofs"
	minutes := func(n int) time.Duration { return time.Duration(n) * time.Minute }
	want := []classroom.Lesson{
		{Title: "A", Page: "first.html", Start: classroom.AnyTime, Times: 1, Visits: 1},
		{Title: "Plain", Page: "plain.html", Start: classroom.AnyTime, Times: 1, Visits: 1},
		{Title: "Full", Page: "full.html", Date: place.Date{Year: 2027, Month: 4, Day: 20}, Start: minutes(13*60 + 30), Length: minutes(75), Times: 1, Visits: 2,
			Needs: []classroom.Need{
				{Kind: classroom.Dry}, {Kind: classroom.SunUp, Height: quantity.Degrees(25), Window: minutes(20)}, {Kind: classroom.MoonUp, Height: ten, Window: minutes(20)}, {Kind: classroom.Dark},
				{Kind: classroom.DarkBy, By: minutes(21*60 + 15)}, {Kind: classroom.HourMarks, Height: quantity.Degrees(25), Marks: classroom.Span{From: minutes(9 * 60), To: minutes(14*60 + 30)}},
			},
			After: classroom.Gap{Lesson: 1, Least: 3, Most: 9, Clock: true}, Wet: classroom.Changed, With: 4,
			Kit: []classroom.Thing{
				{Item: "card", Count: 0.5, Share: classroom.PerGroup, Spare: 3, Source: classroom.ToBuy, UsedUp: true, Price: 4.5, Pack: 10},
				{Item: "lamp", Count: 1, Share: classroom.PerClass, Source: classroom.AtSchool, Pack: 1},
				{Item: "jar", Count: 1, Share: classroom.PerPupil, Source: classroom.FromHome, Pack: 1},
			},
			Question: "Why?", Goals: []string{"draw", "tell why"}, Evidence: []string{"the drawing"}, Codes: []string{"S 6.1", "M 6.4"}, Absent: "Draw at home."},
		{Title: "Last", Page: "last.html", Start: classroom.AnyTime, Times: 1, Visits: 1, Needs: []classroom.Need{{Kind: classroom.SunUp, Height: ten}}, Wet: classroom.Kept, Question: "The last."},
		{Title: "In", Page: "in.html", Start: classroom.AnyTime, Times: 1, Visits: 1, Needs: []classroom.Need{{Kind: classroom.Dry}}, Wet: classroom.Inside},
		{Title: "Later", Page: "later.html", Start: classroom.AnyTime, Times: 1, Visits: 1, Needs: []classroom.Need{{Kind: classroom.Dry}}, Wet: classroom.Later},
	}
	if len(got) != len(want) {
		t.Fatalf("%d lessons, want %d", len(got), len(want))
	}
	for i := range want {
		if fmt.Sprintf("%+v", got[i]) != fmt.Sprintf("%+v", want[i]) {
			t.Errorf("got  %+v\nwant %+v", got[i], want[i])
		}
	}
}

// The order of the pages: the start, the lessons by order and then by the number
// and name of their file, other pages, and those that gather.
func TestOrderOfPages(t *testing.T) {
	part := func(part, more string) string {
		return "```lesson\ntitle = \"T\"\npart = \"" + part + "\"\n" + more + "\n```\n"
	}
	unit, problems := unitOf(t, map[string]string{
		"10-ten.md": part("lesson", ""), "9-nine.md": part("lesson", ""), "b/2-two.md": part("lesson", ""), "zero.md": part("lesson", ""),
		"1-last.md": part("lesson", "order = 5"), "11-first.md": part("lesson", "order = -1"), "12 with space.md": part("lesson", ""), "007-James.md": part("lesson", ""),
		"a-page.md": part("page", ""), "z-start.md": part("start", ""), "0-words.md": part("glossary", ""),
	})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var got []string
	for _, l := range unit.Lessons {
		got = append(got, fmt.Sprintf("%d %s", l.Number, l.Page))
	}
	want := "0 z-start.html, 1 first.html, 2 zero.html, 3 two.html, 4 james.html, 5 nine.html, 6 ten.html, 7 12-with-space.html, 8 last.html, 0 a-page.html, 0 safety.html, 0 words.html, 0 sources.html, 0 reference.html"
	if strings.Join(got, ", ") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ", "), want)
	}
}

// Anchors of headings: words joined by strokes, values left out, no two alike, and
// none that begins like the page's own.
func TestAnchors(t *testing.T) {
	unit, _ := unitOf(t, map[string]string{"a.md": head + "# The Sun's way!\n\n## Noon at {sun-day.noon date=2027-04-20} sharp\n\n## Noon at {sun-day.set} sharp\n\n## NB take note\n\n## {sun-day.noon}\n\n## Élan & 3 more\n\n## ...\n"})
	var got []string
	for name := range unit.Lessons[0].Anchors {
		got = append(got, name)
	}
	slices.Sort(got)
	want := []string{"noon-at-sharp", "noon-at-sharp-2", "part", "part-2", "part-nb-take-note", "the-sun-s-way", "élan-3-more"}
	if !slices.Equal(got, want) {
		t.Errorf("anchors are %q, want %q", got, want)
	}
}

// A file that only answers and staff notes refer to is for staff; a caution is for
// everyone, and so is a file that both show.
func TestFilesForStaff(t *testing.T) {
	unit, problems := unitOf(t, map[string]string{
		"a.md":    head + "```answer\n[x](one.csv) [y](both.csv)\n```\n\n> ```staff\n> - [x](two.csv)\n> ```\n\n```caution\n[z](three.csv)\n```\n\n[both](both.csv) [four](four.csv)\n\n```answer\n[four](four.csv)\n```\n",
		"one.csv": "1", "two.csv": "2", "three.csv": "3", "four.csv": "4", "both.csv": "5", "none.csv": "6",
	})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	got := map[string]bool{}
	for _, f := range unit.Files {
		got[f.Name] = f.Staff
	}
	want := map[string]bool{"one.csv": true, "two.csv": true, "three.csv": false, "four.csv": false, "both.csv": false}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("for staff are %v, want %v", got, want)
	}
}

// Settings are checked at their bounds, with their places.
func TestRulesOfSettings(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"[class]\npupils = 3\ngroup_size = 3\n", ""},
		{"[class]\npupils = 3\ngroup_size = 4\n", "u/unit.toml:12:14: class.group_size 4 is more than the 3 of class.pupils"},
		{"[class]\npupils = 0\ngroup_size = 4\n", ""},
		{"[class]\npupils = 501\n", "u/unit.toml:11:10: class.pupils 501 is outside 0 to 500"},
		{"[class]\npupils = 500\n", ""},
	} {
		_, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte(settings + c.lines)}}, "u")
		if err != nil {
			t.Fatal(err)
		}
		if len(problems) > 1 || problems.Error() != c.want && (len(problems) > 0 || c.want != "") {
			t.Errorf("%q: got %v, want %s", c.lines, problems, c.want)
		}
	}
	// A crest of 200 kB is taken along, a byte more is not.
	for size, want := range map[int]string{200 << 10: "", 200<<10 + 1: "u/unit.toml:3:9: school.crest: c.svg has 200 kB; up to 200 kB are taken along, for it is on every page"} {
		crest := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`
		crest += strings.Repeat(" ", size-len(crest))
		_, problems, err := source.Read(fstest.MapFS{
			"unit.toml": {Data: []byte(strings.Replace(settings, "[school]\n", "[school]\ncrest = \"c.svg\"\n", 1))},
			"a.md":      {Data: []byte(head)}, "c.svg": {Data: []byte(crest)},
		}, "u", own(t), placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		if len(problems) > 1 || (want == "") != (len(problems) == 0) || want != "" && problems[0].Error() != want {
			t.Errorf("a crest of %d bytes: got %v, want %q", size, problems, want)
		}
	}
}

// What a lesson says to keep people from harm is gathered in its order, each caution once:
// those of its placeholders, those that empty blocks name, and words of its own, which
// from there on take the place of the cautions that they name.
func TestCareOfALesson(t *testing.T) {
	unit, problems := unitOf(t, map[string]string{"a.md": head + "```compute dial-gnomon\n```\n\n```caution saw scissors\n```\n\n" +
		"```caution sun lamp\nKeep \\*two\\* steps\nback &amp; **wait** until {sun-day.noon}.\n\n- No [lens](https://example.org).\n```\n\n```compute dial-day\n```\n\n" +
		"````staff\n```caution\nOnly ours.\n```\n\n```compute rocket-zone\n```\n````\n\n````answer\n```caution\nWithin.\n```\n````\n"})
	if problems.Faults() > 0 {
		t.Fatal(problems)
	}
	want := []classroom.Care{
		{Names: []string{"scissors"}}, {Names: []string{"tip"}}, {Names: []string{"saw"}},
		{Names: []string{"sun", "lamp"}, Words: "Keep *two* steps back & wait until …. No lens."},
		{Words: "Only ours."}, {Names: []string{"sighting"}}, {Names: []string{"clear-zone"}}, {Words: "Within."},
	}
	if got := unit.Taught()[0].Care; fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}
