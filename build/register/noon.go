package register

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

// A noonCheck says when the Sun's noon is by what is typed, and what is wrong with
// that, by key.
type noonCheck struct {
	typeset.Noon
	wrong, doubt map[string]string
}

// noonOf checks the place that is typed. Without a first day of term the Sun's noon is
// that of today.
func noonOf(w *typeset.Words, text map[string]string, today place.Date) noonCheck {
	n := noonCheck{Noon: typeset.Noon{At: "120", Says: w.Say("form.noon_open")}, wrong: map[string]string{}, doubt: map[string]string{}}
	v := form.Values{}
	keys := append(school.Where(), school.TermFirstDay)
	for _, key := range keys {
		field, _ := school.Settings().Field(key.Name())
		typed := normal(text[key.Name()])
		if typed == "" {
			continue
		}
		x, complaint := school.Take(field, typed)
		if complaint != "" {
			if key != form.AnyKey(school.TermFirstDay) {
				n.wrong[key.Name()] = wrongSentence(field, typed, complaint, w)
			}
			continue
		}
		v[key.Name()] = x
	}
	day := school.TermFirstDay.Of(v)
	if day.IsZero() {
		day = today
	}
	if !school.Latitude.In(v) || !school.Longitude.In(v) || school.TimeZone.Of(v) == nil {
		return n
	}
	noon := school.SunsNoon(school.Longitude.Of(v), school.TimeZone.Of(v), day)
	n.Known = true
	n.At = strconv.FormatFloat(noon.Hours()*10, 'f', 1, 64)
	at := time.Date(day.Year, day.Month, day.Day, 0, 0, 0, 0, time.UTC).Add(noon)
	n.Says = w.Say("form.noon_at", say.Clock(at))
	n.Note = w.Say("form.noon_on", say.Date(day))
	if d, ok := school.DoubtedPlace(v, day); ok {
		n.doubt[d.Key.Name()] = sentence(strings.TrimPrefix(d.Text, d.Key.Name()+": "), w)
	}
	return n
}

// noon answers the script of the page: a call with what the check says.
func (r *Register) noon(w http.ResponseWriter, q *http.Request) {
	query := q.URL.Query()
	asked, err := strconv.Atoi(query.Get("asked"))
	if err != nil || len(q.URL.RawQuery) > 4096 {
		http.Error(w, "asked: a number is wanted", http.StatusBadRequest)
		return
	}
	u, closing, err := r.unit(q)
	if err != nil {
		failed(w, err)
		return
	}
	defer closing()
	text := map[string]string{}
	for key := range query {
		text[key] = query.Get(key)
	}
	bothAxes(text, u.words.Code == "fr")
	n := noonOf(u.words, text, r.Today())
	answer, err := json.Marshal(struct {
		Asked int               `json:"asked"`
		Known bool              `json:"known"`
		At    string            `json:"at"`
		Says  string            `json:"says"`
		Note  string            `json:"note"`
		Wrong map[string]string `json:"wrong"`
		Doubt map[string]string `json:"doubt"`
	}{asked, n.Known, n.At, n.Says, n.Note, n.wrong, n.doubt})
	if err != nil {
		failed(w, err)
		return
	}
	r.send(w, "text/javascript; charset=utf-8", http.StatusOK, fmt.Appendf(nil, "noonbookNoon(%s);", answer))
}
