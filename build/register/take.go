package register

import (
	"errors"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"strings"
	"time"
	"unicode"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/starter"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

func (r *Register) takeSettings(w http.ResponseWriter, q *http.Request, typed url.Values) {
	r.writes.Lock()
	defer r.writes.Unlock()
	u, closing, err := r.unit(q)
	if err != nil {
		failed(w, err)
		return
	}
	defer closing()
	d := u.typedDraft(typed)
	if typed.Get("file-sum") != sumOf(u.src) {
		r.stale(w, u, d, typed.Get("file-sum"))
		return
	}
	changes := u.changes(d)
	src, err := u.with(changes)
	if err != nil {
		r.refuse(w, u, d, u.unwritten(err, d))
		return
	}
	after := u.as(src)
	found, err := after.problems()
	if err != nil {
		failed(w, err)
		return
	}
	by, _ := after.byKey(found)
	for key, text := range by.wrong {
		if key = d.typedCell(key, changes); d.wrong[key] == "" {
			d.wrong[key] = text + guess(key, after.values)
		}
	}
	for key, text := range by.doubt {
		if d.wrong[key] == "" {
			d.doubt[key] = text
		}
	}
	if len(d.wrong) > 0 || len(d.doubt) > 0 && typed.Get("as-it-is") == "" {
		r.refuse(w, u, d, nil)
		return
	}
	if err := r.write(u, changes, src); err != nil {
		r.refuse(w, u, d, []string{sentence(err.Error(), u.words)})
		return
	}
	r.Press()
	onward(w, "../")
}

// write lays a new unit out, or puts a changed unit.toml in the place of the old.
func (r *Register) write(u unit, changes form.Values, src []byte) error {
	if u.src == nil && u.folder == "" {
		if r.Begin == nil {
			return errors.New("there is no unit here that could be changed")
		}
		return r.Begin(changes)
	}
	if string(src) == string(u.src) {
		return nil
	}
	return save(u.folder, school.SettingsFile, src)
}

// unwritten tells why the file could not be changed: beside a list of tables that is
// written as no page can change it, else at the top of the page.
func (u unit) unwritten(err error, d draft) (why []string) {
	key, rest, _ := strings.Cut(err.Error(), " ")
	if f, known := school.Settings().Field(key); known && f.Kind() == form.Tables {
		add(d.wrong, key, sentence("in "+school.SettingsFile+" this "+rest, u.words))
		return nil
	}
	return []string{sentence(err.Error(), u.words)}
}

// refuse sends the page back with what was typed.
func (r *Register) refuse(w http.ResponseWriter, u unit, d draft, why []string) {
	page := r.settingsPage(u, d)
	for _, text := range why {
		page.Mistakes = append([]typeset.Mistake{{Text: text}}, page.Mistakes...)
	}
	r.answer(w, http.StatusUnprocessableEntity, page)
}

// typedDraft is what was typed, and the complaints about what cannot be read. A line
// that was not sent stays as it is.
func (u unit) typedDraft(typed url.Values) draft {
	d := u.draft()
	for _, f := range school.Settings() {
		if f.Kind() == form.Tables {
			d.grids[f.Name()] = u.typedGrid(f, typed)
			continue
		}
		texts, sent := typed[f.Name()]
		if !sent {
			continue
		}
		if f.Kind() == form.Texts && chosen(f) {
			texts = strings.FieldsFunc(strings.Join(texts, "\n"), func(c rune) bool { return c == '\n' })
			d.text[f.Name()] = strings.Join(texts, ", ")
		} else {
			d.text[f.Name()] = normal(texts[0])
		}
	}
	bothAxes(d.text, u.words.Code == "fr")
	return d
}

// bothAxes parts a latitude and a longitude that somebody copied from a map into the
// line of the latitude: 46.09, −64.77.
func bothAxes(text map[string]string, french bool) {
	field, _ := school.Settings().Field(school.Latitude.Name())
	typed := normal(text[school.Latitude.Name()])
	if _, complaint := school.Take(field, typed); typed == "" || complaint == "" {
		return
	}
	latitude, longitude, err := starter.Place(typed, french)
	if err != nil {
		return
	}
	for key, degrees := range map[form.Key[float64]]float64{school.Latitude: latitude, school.Longitude: longitude} {
		text[key.Name()], _ = field.Typed(math.Round(degrees*1e5) / 1e5) // about a metre
	}
}

// changes are the values that are other than the file's, nil for one that is to go; of
// a new unit they are all that is typed. Complaints go to the draft.
func (u unit) changes(d draft) form.Values {
	changes := form.Values{}
	for _, f := range school.Settings() {
		if f.Kind() == form.Tables {
			if rows, changed := u.tables(f, d); changed {
				changes[f.Name()] = rows
			}
			continue
		}
		text, was := d.text[f.Name()], u.offered(f)
		switch {
		case text == was && (u.src != nil || text == ""):
		case text == "" && f.Required:
			d.wrong[f.Name()] = sentence("is missing: "+f.Allowed(), u.words)
		case text == "":
			if u.src != nil {
				changes[f.Name()] = nil
			}
		default:
			v, complaint := school.Take(f, text)
			if complaint != "" {
				d.wrong[f.Name()] = wrongSentence(f, text, complaint, u.words)
				continue
			}
			changes[f.Name()] = v
		}
	}
	return changes
}

// with is the unit's file with the changes.
func (u unit) with(changes form.Values) ([]byte, error) {
	if u.src == nil {
		return school.Write(changes), nil
	}
	return school.Rewrite(u.src, changes)
}

// byKey sorts problems under the keys that they are about. The rest is as the terminal
// tells it.
func (u unit) byKey(found problem.List) (by draft, rest []string) {
	by = newDraft()
	for _, p := range found {
		if name, text, ok := u.cellAt(p); ok && !p.Warning {
			add(by.wrong, name, sentence(text, u.words))
			continue
		}
		first, _, _ := strings.Cut(p.Text, " ")
		field, known := school.Settings().Field(strings.TrimRight(first, ":,"))
		if !known {
			if !p.Warning {
				rest = append(rest, p.Error())
			}
			continue
		}
		text := sentence(strings.TrimLeft(strings.TrimPrefix(p.Text, field.Name()), ": "), u.words)
		if p.Warning {
			add(by.doubt, field.Name(), text)
		} else {
			add(by.wrong, field.Name(), text)
		}
	}
	return by, rest
}

func add(to map[string]string, key, text string) {
	if to[key] != "" {
		text = to[key] + " " + text
	}
	to[key] = text
}

// wrongSentence is a complaint about what was typed as a sentence, with a guess of what
// was meant.
func wrongSentence(f form.Field, text, complaint string, w *typeset.Words) string {
	if f.Kind() == form.Zone {
		if zone := zoneNear(text); zone != "" {
			return sentence(complaint, w) + " Did you mean " + zone + "?"
		}
	}
	return sentence(complaint, w)
}

// zoneNear is the zone of the IANA database that has the town's name.
func zoneNear(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return !unicode.IsLetter(c) })
	for i, word := range words {
		letters := []rune(word)
		letters[0] = unicode.ToUpper(letters[0])
		words[i] = string(letters)
	}
	for len(words) > 0 && len(words) < 5 {
		town := strings.Join(words, "_")
		for _, part := range []string{"America/", "Europe/", "Africa/", "Asia/", "Australia/", "Pacific/", "Atlantic/", "Indian/", "Antarctica/"} {
			if _, err := time.LoadLocation(part + town); err == nil {
				return part + town
			}
		}
		words = words[1:] // America / moncton
	}
	return ""
}

// guess asks for what may have been meant where two values do not go together; in
// English, as problems are.
func guess(key string, v form.Values) string {
	first, last := school.TermFirstDay.Of(v), school.TermLastDay.Of(v)
	if key != school.TermLastDay.Name() || first.IsZero() || last.IsZero() || first.DaysUntil(last) >= 0 {
		return ""
	}
	const shortest = 14 // days that a unit takes at least: common practice, no source
	for month := range 24 {
		year, m := first.Year, first.Month+time.Month(month)
		for m > 12 {
			year, m = year+1, m-12
		}
		day := place.Date{Year: year, Month: m, Day: last.Day}
		if _, err := place.ParseDate(day.String()); err == nil && first.DaysUntil(day) >= shortest {
			return fmt.Sprintf(" Did you mean %d %s %d?", day.Day, day.Month, day.Year)
		}
	}
	return ""
}

// stale sends the page back when its file is another by now: what was not touched
// follows the file, what was typed stays, and the page tells what differs.
func (r *Register) stale(w http.ResponseWriter, u unit, d draft, sum string) {
	before, known := r.seen.of(sum)
	if sum == "none" {
		before, known = nil, true
	}
	was := u.as(before)
	var meanwhile []string
	for _, f := range school.Settings() {
		name := f.Name()
		then, now := was.said(f), u.said(f)
		touched := d.said(f) != then || !known
		if !touched && f.Kind() == form.Tables {
			d.grids[name] = u.grid(f)
		} else if !touched {
			d.text[name] = now
		}
		if touched && d.said(f) != now {
			d.note[name] = u.words.Say("form.in_file_now", say.Text(u.orNothing(now)))
		}
		if known && then != now {
			meanwhile = append(meanwhile, u.words.Say("form.became", say.Text(label(f, u.words)), say.Text(u.orNothing(then)), say.Text(u.orNothing(now))))
		} else if !known && d.note[name] != "" {
			meanwhile = append(meanwhile, label(f, u.words)+": "+d.note[name])
		}
	}
	u.changes(d) // for its complaints
	page := r.settingsPage(u, d)
	page.Meanwhile = meanwhile
	if len(meanwhile) == 0 {
		page.Meanwhile = []string{u.words.Say("form.only_remarks")}
	}
	r.answer(w, http.StatusConflict, page)
}

// said is what the line of a key says, of a list of tables all its cells.
func (d draft) said(f form.Field) string {
	if f.Kind() == form.Tables {
		return d.grids[f.Name()].text()
	}
	return d.text[f.Name()]
}

// said is what stands on the line of a key, as the file is.
func (u unit) said(f form.Field) string { return u.draft().said(f) }

func (u unit) orNothing(text string) string {
	if text == "" {
		return u.words.Say("form.nothing")
	}
	return text
}
