package main

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// monctonUnit is unit.toml of a school whose clocks go forward on Sunday 14 March
// 2027; term lines follow from line 9 on.
const monctonUnit = `[unit]
title = "T"
[school]
name = "S"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
[term]
`

// block writes a lesson whose block has the title L and further lines; the title
// is on line 2, the first further line on line 3.
func block(title, lines string) string {
	return "```lesson\ntitle = \"" + title + "\"\n" + lines + "\n```\n\nWords.\n"
}

// What proof says of lesson times and days: every line, with its place, and
// nothing else. The days are those of a wall calendar: 12 April 2027 is a Monday.
func TestProofOfTimesAndDays(t *testing.T) {
	const april = "first_day = 2027-04-12\nlast_day = 2027-04-16\n"
	const touching = `lesson_times = ["9:00-9:50", "9:50-10:40"]` + "\n"
	for _, c := range []struct {
		name    string
		term    string
		lessons []string // 1.md, 2.md, …
		code    int
		want    []string // lines with a place; a line with none stands for no problem
	}{
		{"times that touch", april + touching, []string{block("A", ""), block("B", "")}, done, nil},
		{"two lessons a day in times that touch", april + touching + "lessons_a_day = 2\n", []string{block("A", ""), block("B", ""), block("C", "")}, done, nil},
		{"lessons at times that touch", april + touching, []string{block("A", "date = 2027-04-12\nstart = \"9:00\""), block("B", "date = 2027-04-12\nstart = \"9:50\"")}, done, nil},
		{"times over one another", april + `lesson_times = ["9:00-9:50", "9:49-10:40"]`, []string{block("A", "")}, contentFault,
			[]string{"unit.toml:11:30: term.lesson_times: this one begins before the one before it ends"}},
		{"times over one another, out of order", april + `lesson_times = ["10:00-10:50", "9:00-10:01"]`, []string{block("A", "")}, contentFault,
			[]string{"unit.toml:11:17: term.lesson_times: this one begins before the one before it ends"}},
		{"a time of no length", april + `lesson_times = ["9:00-9:00"]`, []string{block("A", "")}, contentFault,
			[]string{`unit.toml:11:17: term.lesson_times is "9:00-9:00", want a stretch of the day such as "9:10-10:00"`}},
		{"a time turned round", april + `lesson_times = ["8:00-8:45", "10:00-9:00"]`, []string{block("A", "")}, contentFault,
			[]string{`unit.toml:11:30: term.lesson_times is "10:00-9:00", want a stretch of the day such as "9:10-10:00"`}},

		{"a date a day before the term", april, []string{block("A", "date = 2027-04-11")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-11 is outside the term, 2027-04-12 to 2027-04-16"}},
		{"a date a year before the term", april, []string{block("A", ""), block("B", "summary = \"x\"\ndate = 2026-04-14")}, contentFault,
			[]string{"2.md:4:8: lesson: date 2026-04-14 is outside the term, 2027-04-12 to 2027-04-16",
				"1.md:2:9: lesson: no school day is left for it before term.last_day 2027-04-16"}}, // it keeps its place before B
		{"a date a day after the term", april, []string{block("A", "date = 2027-04-17")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-17 is outside the term, 2027-04-12 to 2027-04-16"}},
		{"the first and the last day", april, []string{block("A", "date = 2027-04-12"), block("B", "date = 2027-04-16")}, done, nil},
		{"the first day off", april + "days_off = [2027-04-12]\n", []string{block("A", "date = 2027-04-12")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-12 is a Monday, not a school day"}},
		{"the last day off", april + "days_off = [2027-04-16]\n", []string{block("A", "date = 2027-04-16")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-16 is a Friday, not a school day"}},
		{"days off at both ends leave three", april + "days_off = [2027-04-12, 2027-04-16]\n", []string{block("A", ""), block("B", ""), block("C", ""), block("D", "")}, contentFault,
			[]string{"4.md:2:9: lesson: no school day is left for it before term.last_day 2027-04-16; one more school day or term.lessons_a_day = 2 would do; or leave out 4, and the rest fits"}},
		{"a Sunday without school", april, []string{block("A", "date = 2027-04-18")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-18 is outside the term, 2027-04-12 to 2027-04-16"}},
		{"a Sunday with school", "first_day = 2027-04-11\nlast_day = 2027-04-22\nschool_days = [\"sunday\", \"monday\", \"thursday\"]\n", []string{block("A", "date = 2027-04-18")}, done, nil},
		{"a Friday where school is on Sunday", "first_day = 2027-04-11\nlast_day = 2027-04-22\nschool_days = [\"sunday\", \"monday\", \"thursday\"]\n", []string{block("A", "date = 2027-04-16")}, contentFault,
			[]string{"1.md:3:8: lesson: date 2027-04-16 is a Friday, not a school day"}},

		{"a term turned round", "first_day = 2027-04-12\nlast_day = 2027-04-11\n", []string{block("A", "")}, contentFault,
			[]string{"unit.toml:10:12: term.last_day 2027-04-11 is before term.first_day 2027-04-12"}},
		{"a term of one day", "first_day = 2027-04-12\nlast_day = 2027-04-12\n", []string{block("A", "")}, done, nil},
		{"a term of 150 days", "first_day = 2027-02-01\nlast_day = 2027-06-30\n", []string{block("A", ""), block("B", "days_after = 120"), block("C", "date = 2027-06-30")}, done, nil},
		{"a term of 400 days", "first_day = 2027-04-12\nlast_day = 2028-05-15\n", []string{block("A", ""), block("B", "date = 2028-05-15")}, done, nil},
		{"a term of 401 days", "first_day = 2027-04-12\nlast_day = 2028-05-16\n", []string{block("A", "")}, contentFault,
			[]string{"unit.toml:10:12: term.last_day is 400 days after term.first_day; a unit may last up to 400"}},
		{"no school day", april + "school_days = [\"sunday\", \"saturday\"]\n", []string{block("A", "")}, contentFault,
			[]string{"unit.toml:10:12: there is no school day from 2027-04-12 to 2027-04-16, with term.school_days and term.days_off as they are"}},

		{"two lessons at one time", april + touching, []string{block("First", "date = 2027-04-12\nstart = \"9:00\""), block("Second", "date = 2027-04-12\nstart = \"9:49\"")}, done,
			[]string{`2.md:2:9: warning: lesson: it is held while "First" is, on 2027-04-12`}},
		{"a lesson within another", april + touching, []string{block("First", "date = 2027-04-12\nstart = \"8:00\"\nminutes = 300"), block("Second", "date = 2027-04-12\nstart = \"9:10\"\nminutes = 5")}, done,
			[]string{`2.md:2:9: warning: lesson: it is held while "First" is, on 2027-04-12`}},
		{"a lesson longer than its time", april + touching + "lessons_a_day = 2\n", []string{block("A", "minutes = 100"), block("B", "")}, done, nil},
		{"a lesson longer than the school day", april + touching, []string{block("A", "minutes = 101")}, contentFault,
			[]string{"1.md:2:9: lesson: no school day has lesson times enough for it"}},
		{"a long lesson without times of the school's own", april, []string{block("A", "minutes = 600")}, done, nil},
		{"more visits than times", april + touching, []string{block("A", "visits = 3")}, contentFault,
			[]string{"1.md:2:9: lesson: no school day has lesson times enough for it"}},
		{"as many visits as times", april + touching, []string{block("A", "visits = 2")}, done, nil},
		{"a day too few for two a day", "first_day = 2027-04-12\nlast_day = 2027-04-12\nlessons_a_day = 2\n" + touching, []string{block("A", ""), block("B", ""), block("C", "")}, contentFault,
			[]string{"3.md:2:9: lesson: no school day is left for it before term.last_day 2027-04-12; one more school day would do; or leave out 3, and the rest fits"}},

		{"the clock changes between two", "first_day = 2027-03-11\nlast_day = 2027-03-19\n", []string{block("A", "date = 2027-03-12"), block("B", "same_clock = true\ndate = 2027-03-15")}, done,
			[]string{`2.md:3:14: warning: lesson: no clock change should lie between it and "A", and the clocks change on 14 March 2027`}},
		{"and they wait for it", "first_day = 2027-03-11\nlast_day = 2027-03-19\n", []string{block("A", ""), block("B", "same_clock = true\ndays_after = 2")}, done, nil},
		{"days between", april, []string{block("A", "date = 2027-04-12"), block("B", "date = 2027-04-14\ndays_after = 3")}, done,
			[]string{`2.md:4:14: warning: lesson: it should come at least 3 days after "A", and comes 2 days after it`}},
		{"just enough days between", april, []string{block("A", "date = 2027-04-12"), block("B", "date = 2027-04-14\ndays_after = 2\ndays_within = 2")}, done, nil},
		{"too many days between", april, []string{block("A", "date = 2027-04-12"), block("B", "date = 2027-04-14\ndays_within = 1")}, done,
			[]string{`2.md:4:15: warning: lesson: it should come at most 1 day after "A", and comes 2 days after it`}},

		{"a kept time that is not there", april + "lesson_times = [\"9:00-9:50\"]\n", []string{block("A", "date = 2027-04-15\nneeds = [\"dry\"]\nif_wet = \"keep\""), block("B", "date = 2027-04-16")}, done,
			[]string{"1.md:5:10: warning: lesson: no lesson time can be kept free for it before the next lesson, in case of rain"}},
		{"a kept time that is there", april, []string{block("A", "date = 2027-04-14\nneeds = [\"dry\"]\nif_wet = \"keep\""), block("B", "date = 2027-04-16")}, done, nil},
		{"changes with nothing to change with", april, []string{block("A", "needs = [\"dry\"]\nif_wet = \"change\"\nchange_with = \"3.md\""), block("B", "")}, contentFault,
			[]string{`1.md:5:15: lesson: change_with "3.md" is no lesson of the unit; did you mean "1.md"?`}},
		{"changes with an earlier one", april, []string{block("A", ""), block("B", "needs = [\"dry\"]\nif_wet = \"change\"\nchange_with = \"1.md\"")}, contentFault,
			[]string{`2.md:5:15: lesson: change_with wants a lesson after this one, and "A" is not`}},
		{"inside and later", april, []string{block("A", "needs = [\"dry\"]\nif_wet = \"inside\""), block("B", "needs = [\"dry\"]\nif_wet = \"later\"")}, done, nil},
		{"a word that is none", april, []string{block("A", "needs = [\"dry\"]\nif_wet = \"kept\"")}, contentFault,
			[]string{`1.md:4:10: lesson: if_wet "kept" is unknown, want "later", "keep", "change" or "inside"`}},

		// 20 April: the Sun sets at 20:10 by the clock and is 6° down half an hour later.
		{"dark enough", "first_day = 2027-04-20\nlast_day = 2027-04-20\n", []string{block("A", "needs = [\"dark\"]\nstart = \"21:00\"")}, done, nil},
		{"not dark yet", "first_day = 2027-04-20\nlast_day = 2027-04-20\n", []string{block("A", "needs = [\"dark\"]\nstart = \"20:15\"\ndate = 2027-04-20")}, done,
			[]string{"1.md:3:9: warning: lesson: it needs darkness, and at 20:15 on 20 April 2027 the Sun stands at −1°; the next school day that is better is 8 September 2027"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := map[string]string{"unit.toml": monctonUnit + c.term}
			for i, text := range c.lessons {
				files[fmt.Sprint(i+1, ".md")] = text
			}
			dir := folder(t, files)
			code, out, errs := noonbook(t, "proof", dir)
			if code != c.code {
				t.Errorf("exit %d, want %d", code, c.code)
			}
			var got []string
			for line := range strings.SplitSeq(out+errs, "\n") {
				if at, ok := strings.CutPrefix(line, dir+string(filepath.Separator)); ok {
					got = append(got, at)
				}
			}
			wanted := map[string]bool{}
			for _, w := range c.want {
				wanted[strings.NewReplacer(`"A"`, "“A”", `"B"`, "“B”").Replace(w)], wanted[w] = true, true
			}
			for _, line := range got {
				if !wanted[line] {
					t.Errorf("it says    %s", line)
				}
			}
			if len(got) != len(c.want) {
				t.Errorf("%d lines, want %q\n%s%s", len(got), c.want, out, errs)
			}
			faults, warnings := 0, 0
			for _, w := range c.want {
				if strings.Contains(w, ": warning: ") {
					warnings++
				} else {
					faults++
				}
			}
			if count := fmt.Sprintf("%s, %s\n", counted(faults, "problem"), counted(warnings, "warning")); !strings.HasSuffix(out+errs, count) {
				t.Errorf("it counts otherwise than %q: %s", count, out+errs)
			}
		})
	}
}

// The days and times of the calendar are those of the pages: on the cover, on the
// lesson, on the day sheet and in the calendar file, over a clock change and over
// noon.
func TestTimesOnThePages(t *testing.T) {
	dir := folder(t, map[string]string{
		"unit.toml": monctonUnit + "first_day = 2027-03-11\nlast_day = 2027-03-19\ndays_off = [2027-03-11]\nlesson_times = [\"9:00-9:50\", \"9:50-10:40\", \"11:40-12:30\", \"13:05-13:55\"]\nlessons_a_day = 2\n",
		"1-a.md":    block("Alpha", "minutes = 100\n[sheet]\nfront = [\"plan\"]") + "\n## Plan\n\n| Minute | What |\n|---|---|\n| 0 | begin |\n| 59 | nearly an hour |\n| 99 | end |\n",
		"2-b.md":    block("Beta", "needs = [\"dry\"]\nif_wet = \"keep\"\n[sheet]\nfront = [\"plan\"]") + "\n## Plan\n\n| Minute | What |\n|---|---|\n| 0 | begin |\n| 19 | before noon |\n| 20 | noon |\n| 49 | end |\n",
		"3-c.md":    block("Gamma", "visits = 2\nneeds = [\"dry\"]\nif_wet = \"inside\"\n[sheet]\nfront = [\"plan\"]") + "\n## Plan\n\n| Minute | What |\n|---|---|\n| 5 | begin |\n",
		"4-d.md":    block("Delta", "start = \"23:30\"\nminutes = 60\n[sheet]\nfront = [\"plan\"]") + "\n## Plan\n\n| Minute | What |\n|---|---|\n| 15 | before midnight |\n| 45 | after midnight |\n",
	})
	out := filepath.Join(t.TempDir(), "handbook")
	must(t, "press", "--staff", "--content", dir, "--out", out)
	class, staff := tree(t, out), tree(t, out+"-staff")

	// Friday 12 March: Alpha 9:00 to 10:40, Beta 11:40 to 12:30. Beta's kept time is
	// Monday 15 March 9:00, before Gamma at 9:50; Delta is that night.
	cover := class["/index.html"]
	var dates []string
	for _, m := range regexp.MustCompile(`<time datetime="(2027-[\d-]+)">([^<]*)</time>`).FindAllStringSubmatch(cover, -1) {
		dates = append(dates, m[1]+" "+m[2])
	}
	if got, want := strings.Join(dates, ", "), "2027-03-12 12 March, 2027-03-12 12 March, 2027-03-15 15 March, 2027-03-15 15 March"; !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), want) {
		t.Errorf("the cover has %s, want %s", got, want)
	}
	for page, want := range map[string]string{
		"a.html": "Friday 12 March, 9:00 to 10:40",
		"b.html": "Friday 12 March, 11:40 to 12:30",
		"c.html": "Monday 15 March, 9:50 to 10:40",
		"d.html": "Monday 15 March, 23:30 to 0:30",
	} {
		for where, text := range map[string]string{"the lesson": class["/"+page], "the lesson for staff": staff["/"+page], "the day sheet": staff["/day-"+page]} {
			if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
				t.Errorf("%s %s lacks %q", where, page, want)
			}
		}
	}
	for page, want := range map[string]string{
		"/day-a.html": "9:00 9:59 10:39",
		"/day-b.html": "11:40 11:59 12:00 12:29",
		"/day-c.html": "9:55",
		"/day-d.html": "23:45 0:15",
	} {
		var got []string
		for _, m := range regexp.MustCompile(`<td class="clock">(.*?)</td>`).FindAllStringSubmatch(staff[page], -1) {
			got = append(got, m[1])
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s has the clock times %v, want %s", page, got, want)
		}
	}
	// UTC is four hours ahead of the school on the 12th and three on the 15th.
	var events []string
	ics := strings.ReplaceAll(class["/unit.ics"], "\r\n ", "")
	for _, m := range regexp.MustCompile(`(?s)BEGIN:VEVENT\r\nUID:((?:\d-)?(?:lesson|reserve)-\w+).*?DTSTART:(\S+)\r\nDTEND:(\S+)\r\nSUMMARY:(.*?)\r\n.*?STATUS:(\w+)`).FindAllStringSubmatch(ics, -1) {
		events = append(events, strings.Join(m[1:], " "))
	}
	want := []string{
		"lesson-a 20270312T130000Z 20270312T144000Z Lesson 1: Alpha CONFIRMED",
		"lesson-b 20270312T154000Z 20270312T163000Z Lesson 2: Beta CONFIRMED",
		"reserve-b 20270315T120000Z 20270315T125000Z In reserve: Lesson 2: Beta TENTATIVE",
		"lesson-c 20270315T125000Z 20270315T134000Z Lesson 3: Gamma CONFIRMED",
		"2-lesson-c 20270315T144000Z 20270315T153000Z Lesson 3: Gamma CONFIRMED",
		"lesson-d 20270316T023000Z 20270316T033000Z Lesson 4: Delta CONFIRMED",
	}
	if strings.Join(events, "\n") != strings.Join(want, "\n") {
		t.Errorf("the calendar file has\n%s\nwant\n%s", strings.Join(events, "\n"), strings.Join(want, "\n"))
	}
	if staff["/unit.ics"] != class["/unit.ics"] {
		t.Error("the calendar file tells staff more than the class")
	}
}

// Where the place, the zone or the term is missing, that is what proof says:
// nothing is computed in their place and no lesson is blamed.
func TestProofWithoutAPlace(t *testing.T) {
	text := block("A", "needs = [\"sun\"]\nglance = [\"sun-day.noon\"]") + "\n{sun-day.rise} {class-facts.pupils}\n\n```compute dial-table\n```\n"
	whole := monctonUnit + "first_day = 2027-04-12\nlast_day = 2027-04-16\n"
	for _, c := range []struct{ without, want string }{
		{"latitude = 46.09\n", "school.latitude"},
		{"longitude = -64.77\n", "school.longitude"},
		{"time_zone = \"America/Moncton\"\n", "school.time_zone"},
		{"first_day = 2027-04-12\n", "term.first_day"},
		{"last_day = 2027-04-16\n", "term.last_day"},
	} {
		dir := folder(t, map[string]string{"unit.toml": strings.Replace(whole, c.without, "", 1), "1.md": text})
		code, _, errs := noonbook(t, "proof", dir)
		if code != contentFault || !strings.HasSuffix(errs, "1 problem, 0 warnings\n") || !strings.Contains(errs, ": "+c.want+" is missing: ") {
			t.Errorf("without %s: exit %d, %s", c.want, code, errs)
		}
	}
}
