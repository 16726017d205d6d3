package form_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// desk is a form with one of each kind of key that a teacher gets wrong.
var desk = form.Form{
	{Key: form.Key[string]("school.name"), Required: true},
	{Key: form.Key[float64]("school.latitude"), Unit: "deg", Min: -90, Max: 90, Required: true},
	{Key: form.Key[float64]("school.longitude"), Unit: "deg", Min: -180, Max: 180},
	{Key: form.Key[*time.Location]("school.time_zone")},
	{Key: form.Key[string]("school.paper"), Choices: []string{"A4", "Letter"}},
	{Key: form.Key[string]("school.colour")},
	{Key: form.Key[bool]("school.open")},
	{Key: form.Key[place.Date]("term.first_day")},
	{Key: form.Key[[]place.Date]("term.days_off")},
	{Key: form.Key[[]form.TimeSpan]("term.lesson_times")},
	{Key: form.Key[form.YearMonth]("term.month")},
	{Key: form.Key[[]string]("words")},
	{Key: form.Key[int]("squares"), Min: 1, Max: 100000},
	{Key: form.Key[float64]("style_mm"), Unit: "mm", Min: 20, Max: 5000},
	{Key: form.Key[float64]("margin_percent"), Unit: "percent"},
	{Key: form.Key[[]form.Values]("balls"), Fields: form.Form{
		{Key: form.Key[string]("name"), Required: true},
		{Key: form.Key[float64]("diameter_mm"), Unit: "mm", Required: true},
	}},
}

// Each text holds § where a fault stands; the wanted texts follow in that order.
func TestReadSyntaxInPlainWords(t *testing.T) {
	const top = "[school]\nname = \"G\"\n"
	const good = "school.name = \"G\"\nschool.latitude = 1\n"
	for _, c := range []struct {
		text string
		want []string
	}{
		// Numbers. Minutes and seconds: 46 + 5/60 = 46.0833, 64 + 48/60 = 64.8, 46 + 5/60 + 30/3600 = 46.0917.
		{top + "latitude = §-1,3", []string{"school.latitude is -1,3; write -1.3, with a point in place of the comma"}},
		{top + "latitude = §46,083", []string{"school.latitude is 46,083; write 46.083 with a point, or 46083 where thousands are meant"}},
		{top + "latitude = §46°05'N", []string{"school.latitude is 46°05'N; write 46.083"}},
		{top + "latitude = 1\nlongitude = §64° 48′ W # west", []string{"school.longitude is 64° 48′ W; write -64.8"}},
		{top + "latitude = §46°05'30\"N", []string{`school.latitude is 46°05'30"N; write 46.0917`}},
		{top + "latitude = §\"46°05'S\"", []string{`school.latitude is "46°05'S"; write -46.083`}},
		{top + "latitude = §46.1 N", []string{"school.latitude is 46.1 N; write 46.1"}},
		{top + "latitude = §S 46.1", []string{"school.latitude is S 46.1; write -46.1"}},
		{top + "latitude = §50°", []string{"school.latitude is 50°; write 50 without °"}},
		{top + "latitude = §−45.5", []string{"school.latitude is −45.5; write -45.5"}},
		{top + "latitude = §north", []string{"school.latitude is north, want a number from −90° to 90°"}},
		{top + "latitude = §\"46.1\"", []string{`school.latitude is "46.1"; write 46.1 without quotes`}},
		{top + "latitude = §.5", []string{"school.latitude is .5; write 0.5"}},
		{top + "latitude = §5.", []string{"school.latitude is 5.; write 5"}},
		{top + "latitude = §046.1", []string{"school.latitude is 046.1; write 46.1"}},
		{top + "latitude = §= 1", []string{"school.latitude: one = too many"}},
		{good + "[[balls]]\nname = 'a'\ndiameter_mm = 1\n[[balls]]\nname = 'b'\ndiameter_mm = §12,5", []string{"diameter_mm is 12,5; write 12.5, with a point in place of the comma"}},
		{good + "style_mm = §125mm", []string{"style_mm is 125mm; write 125 without mm"}},
		{good + "style_mm = §12,5 cm", []string{"style_mm is 12,5 cm; write 125, the number of mm"}},
		{good + "style_mm = §\"125 mm\"", []string{`style_mm is "125 mm"; write 125 without mm`}},
		{good + "style_mm = §125 kg", []string{"style_mm is 125 kg, want a number from 20 mm to 5000 mm"}},
		{good + "margin_percent = §40%", []string{"margin_percent is 40%; write 40 without %"}},
		{good + "squares = §1 300", []string{"squares is 1 300; write 1300"}},
		{good + "squares = §007", []string{"squares is 007; write 7"}},
		// Dates.
		{good + "term.first_day = §27/04/2027", []string{"term.first_day is 27/04/2027; write 2027-04-27"}},
		{good + "term.first_day = §2027-4-26", []string{"term.first_day is 2027-4-26; write 2027-04-26"}},
		{good + "term.first_day = §4/27/2027", []string{"term.first_day is 4/27/2027; write 2027-04-27"}},
		{good + "term.first_day = §04.05.2027", []string{"term.first_day is 04.05.2027; write 2027-05-04 or 2027-04-05, year, month and day"}},
		{good + "term.first_day = §27 April 2027", []string{"term.first_day is 27 April 2027; write 2027-04-27"}},
		{good + "term.first_day = §27 août 2027", []string{"term.first_day is 27 août 2027; write 2027-08-27"}},
		{good + "term.first_day = §\"April 27, 2027\"", []string{`term.first_day is "April 27, 2027"; write 2027-04-27`}},
		{good + "term.first_day = §2027-02-30", []string{"term.first_day is 2027-02-30; there is no such day"}},
		{good + "term.first_day = §Monday", []string{"term.first_day is Monday, want a date such as 2027-04-20"}},
		{good + "term.days_off = [2027-04-16, §2027-4-19, §20/04/2027]", []string{"term.days_off is 2027-4-19; write 2027-04-19", "term.days_off is 20/04/2027; write 2027-04-20"}},
		{good + "term.lesson_times = [§9:10-10:00, §10h10-11h]", []string{`term.lesson_times is 9:10-10:00; write "9:10-10:00"`, `term.lesson_times is 10h10-11h; write "10:10-11:00"`}},
		{good + "term.month = §2027-04", []string{`term.month is 2027-04; write "2027-04"`}},
		// Texts.
		{"[school]\nlatitude = 1\nname = §“Golden”", []string{`school.name: quotes are straight; write "Golden"`}},
		{"[school]\nlatitude = 1\nname = §„Die \"Schule\"“ # ours", []string{`school.name: quotes are straight; write "Die \"Schule\""`}},
		{"[school]\nlatitude = 1\nname = §\"Golden”", []string{`school.name: quotes are straight on both sides; write "Golden"`}},
		{"[school]\nlatitude = 1\nname = §Golden School", []string{`school.name stands without quotes; write "Golden School"`}},
		{"[school]\nlatitude = 1\nname = §\"Golden", []string{`school.name: the text that begins here is not closed; write " at its end`}},
		{"[school]\nlatitude = 1\nname = §\"The \"Golden\" School\"", []string{`school.name: a quote within a text is written \"; write "The \"Golden\" School"`}},
		{"[school]\nlatitude = 1\nname = \"C:§\\school\"", []string{`school.name: a backslash in a text is written \\; a folder's name takes / instead`}},
		{"[school]\nlatitude = 1\nname = \"G\" §School", []string{`school.name: "School" stands behind the value; nothing may, but a comment with #`}},
		{top + "latitude = 1\ntime_zone = §America/Moncton", []string{`school.time_zone stands without quotes; write "America/Moncton"`}},
		{top + "latitude = 1\npaper = §a4", []string{`school.paper is a4; write "A4"`}},
		{top + "latitude = 1\ncolour = §#1a5c3a", []string{`school.colour stands without quotes; write "#1a5c3a"`}},
		{top + "latitude = 1\nopen = §Yes", []string{"school.open is Yes; write true"}},
		{top + "latitude = 1\nopen = §FALSE", []string{"school.open is FALSE; write false"}},
		{good + "words = [§sun, \"moon\", §“stars, and more”]", []string{`words stands without quotes; write "sun"`, `words: quotes are straight; write "stars, and more"`}},
		{good + "words = [\"sun\" §\"moon\"]", []string{"words: a comma is missing before this"}},
		{good + "words = [\"sun\", §, \"moon\"]", []string{"words: a comma too many"}},
		{good + "words = §[\"sun\",\n  \"moon\"\nsquares = 3", []string{"words: the list that begins here is not closed; write ] at its end"}},
		{good + "words = §[\"sun\",\n[term]\nmonth = \"2027-04\"", []string{"words: the list that begins here is not closed; write ] at its end"}},
		{"school.latitude = 1\nschool.name = §\"\"\"Golden\nSchool\nsquares = 3", []string{`school.name: the text that begins here is not closed; write """ at its end`}},
		{good + "balls = [{ name = §Earth, diameter_mm = §12,5 }, { name = 'b', diameter_mm = §3mm }]", []string{`name stands without quotes; write "Earth"`, "diameter_mm is 12,5; write 12.5, with a point in place of the comma", "diameter_mm is 3mm; write 3 without mm"}},
		// Keys and tables.
		{top + "latitude =§", []string{"school.latitude has no value; want a number from −90° to 90°"}},
		{top + "latitude = §# to do", []string{"school.latitude has no value; want a number from −90° to 90°"}},
		{top + "§latitude", []string{"latitude has no value; want a number from −90° to 90°"}},
		{top + "latitude§ 46.1", []string{"an = is missing; write latitude = 46.1"}},
		{top + "latitude§: 46.1", []string{"an = stands between a key and its value, not a colon; write latitude = 46.1"}},
		{top + "latitude = 1\n§name = \"H\"", []string{"school.name is there twice; the first is in line 2"}},
		{top + "latitude = 1\n§[school]\npaper = \"A4\"", []string{"[school] is there twice; put its keys below the one in line 1"}},
		{good + "§= 3", []string{"a key is missing before the ="}},
		{top + "latitude = 1\n§time zone = \"UTC\"", []string{`"time zone" cannot be a key; it has letters, digits, _ and - only; did you mean "time_zone"?`}},
		{top + "latitude = 1\n§[term\nmonth = \"2027-04\"", []string{"the brackets do not match; write [term]"}},
		{good + "§[[balls]\nname = \"a\"", []string{"the brackets do not match; write [[balls]]"}},
		{good + "§[]\nname = \"a\"", []string{"the name of the table is missing; write it between the brackets"}},
		{good + "[term] §month = \"2027-04\"", []string{`"month = \"2027-04\"" cannot stand behind [term]; write it on a line of its own`}},
		{good + "§term]\nmonth = \"2027-04\"", []string{"the brackets do not match; write [term]"}},
		{good + "§* a list", []string{`"* a list" is neither a [table] nor a key = value`}},
		// Several in one run, with what is wrong for other reasons.
		{"[school]\nname = §Golden\nlatitude = §46°05'N\nlongitude = §-64,8\n§papr \"A4\"\n[term]\nfirst_day = §2027-4-26\nmonth = §5\n§ours = 1\n", []string{
			`school.name stands without quotes; write "Golden"`, "school.latitude is 46°05'N; write 46.083", "school.longitude is -64,8; write -64.8, with a point in place of the comma",
			`"papr \"A4\"" is neither a [table] nor a key = value`, "term.first_day is 2027-4-26; write 2027-04-26", `term.month is 5, want a month such as "2027-04"`, "term.ours is not a key; want one of term.first_day, term.days_off, term.lesson_times, term.month",
		}},
		{"[term]\n§[school\nname = §Golden\nlongitude§: §-64,8\n", []string{"the brackets do not match; write [school]", `school.name stands without quotes; write "Golden"`, "an = stands between a key and its value, not a colon; write longitude = -64,8", "school.longitude is -64,8; write -64.8, with a point in place of the comma"}},
		{good + "term.days_off = §[2027-04-16, §31/5/2027\nsquares = §5x", []string{"term.days_off: the list that begins here is not closed; write ] at its end", "term.days_off is 31/5/2027; write 2027-05-31", "squares is 5x; write 5 without x"}},
		{"§[[balls]\nname = §a", []string{"the brackets do not match; write [[balls]]", `name stands without quotes; write "a"`}},
		// What no text may hold.
		{good + "words = [\"a§\x01b\"]", []string{"a control character, U+0001; delete it"}},
		{good + "words = [\"a§\xe9b\"]", []string{"a letter that is not UTF-8; save the file as UTF-8"}},
		{good + "words = [§\"a\\u0000b\"]", []string{"words holds the control character U+0000; delete it"}},
		{"school.latitude = 1\nschool.name = §\"a\\u001b[31m\"", []string{"school.name holds the control character U+001B; delete it"}},
		{"school.latitude = 1\nschool.name = §\"a\\u009b31m\"", []string{"school.name holds the control character U+009B; delete it"}},
		{good + "§\"wo\\u0000rds\" = 1", []string{"a key holds the control character U+0000; it has letters, digits, _ and - only"}},
	} {
		var want []form.Fault
		text := ""
		for i, part := range strings.Split(c.text, "§") {
			if i > 0 {
				n := min(i, len(c.want)) - 1
				want = append(want, form.Fault{Line: strings.Count(text, "\n") + 1, Column: len(text) - strings.LastIndex(text, "\n"), Text: c.want[n]})
			}
			text += part
		}
		_, got, _ := desk.Read([]byte(text))
		if list(got) != list(want) {
			t.Errorf("%q\n got\n%s want\n%s", c.text, list(got), list(want))
		}
	}
}

func list(faults []form.Fault) string {
	var b strings.Builder
	for _, f := range faults {
		fmt.Fprintf(&b, "  %d:%d %s\n", f.Line, f.Column, f.Text)
	}
	return b.String()
}

// What can be read besides a mistake is read, with its places.
func TestReadKeepsTheRest(t *testing.T) {
	values, faults, places := desk.Read([]byte("[school]\nname = Golden\nlatitude = 46.1\n[term]\nmonth = \"2027-04\"\n[[balls]]\nname = \"a\"\ndiameter_mm = 1,5\n"))
	if len(faults) != 2 {
		t.Errorf("%s", list(faults))
	}
	if form.Key[float64]("school.latitude").Of(values) != 46.1 || len(form.Key[[]form.Values]("balls").Of(values)) != 1 || form.Key[form.YearMonth]("term.month").Of(values).First.Month != 4 {
		t.Errorf("values are %v", values)
	}
	if places["term.month"] != (form.Place{Line: 5, Column: 9}) || places["balls[0].name"] != (form.Place{Line: 7, Column: 8}) {
		t.Errorf("places are %v", places)
	}
}

// A sentence of a fault begins in lower case or with the quoted thing, has no final
// stop, and stays on one short line whatever was written.
func TestFaultsAreShort(t *testing.T) {
	long := strings.Repeat("long ", 20000)
	for _, text := range []string{
		"school.name = " + long, "school.name = “" + long + "”", "school.latitude = \"" + long + "\"", long + " = 1", "school.paper = \"" + long + "\"", "[" + long + "]", "words = [" + long + "]",
		long, "school.name = \"" + long, "a = 1\n\"" + long + "\" = 2", "school.time_zone = \"" + long + "\"", "school.name = \"a\" " + long, "[school] " + long, "words = {a = \"" + long + "\"}", "words = [{\"" + long + "\" = 1}]",
	} {
		_, faults, _ := desk.Read([]byte(text))
		if len(faults) == 0 {
			t.Errorf("%.40q has no fault", text)
		}
		for _, f := range faults {
			if len(f.Text) > 400 || strings.ContainsAny(f.Text, "\n\r\x1b") || strings.HasSuffix(f.Text, ".") {
				t.Errorf("%.40q: %d bytes: %.200s", text, len(f.Text), f.Text)
			}
		}
	}
}
