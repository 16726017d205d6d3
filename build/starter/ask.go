package starter

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"math"
	"strconv"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// ErrEnded is that the answers ended before the questions did.
var ErrEnded = errors.New("the answers ended before the last question")

// Ask asks for what the given values lack of what a new unit should know, and returns
// them with the answers. It asks again where an answer is not accepted, and where the
// Sun's noon at the place cannot be right on the given day. It ends with ErrEnded at the
// end of in, and with the context.
func Ask(ctx context.Context, in io.Reader, out io.Writer, given form.Values, today place.Date) (form.Values, error) {
	c := &conversation{ctx: ctx, out: out, lines: make(chan string), values: maps.Clone(given), today: today}
	if c.values == nil {
		c.values = form.Values{}
	}
	go func() {
		defer close(c.lines)
		for s := bufio.NewScanner(in); s.Scan(); {
			select {
			case c.lines <- s.Text():
			case <-ctx.Done():
				return
			}
		}
	}()
	c.say("Enter takes what is in brackets; Ctrl-C ends, and nothing is written")
	for _, question := range []func() error{
		c.text(school.Name, "name of the school", nil),
		c.text(school.Language, "language of what noonbook adds, en or fr", func() string { return "en" }),
		c.where,
		c.text(school.Paper, "paper to print on, A4 or Letter", func() string { return paper(c.values) }),
		c.text(school.ClassName, "what the class is called", func() string { return "" }),
		c.text(school.ClassPupils, "how many pupils", func() string { return "24" }),
		c.text(school.TermFirstDay, "first day of the unit, such as "+today.Add(30).String(), nil),
		c.lastDay,
		c.text(school.TermLessonTimes, "lesson times of a school day", usualTimes),
	} {
		if err := question(); err != nil {
			return nil, err
		}
	}
	return c.values, nil
}

// Missing are the keys without which a unit cannot be laid out.
func Missing(v form.Values) (missing form.Keys) {
	for _, field := range school.Settings() {
		if field.Required && !field.Key.In(v) && field.Name() != school.UnitTitle.Name() {
			missing = append(missing, field.Key)
		}
	}
	return missing
}

func usualTimes() string {
	spans, _ := school.LessonTimes(form.Values{})
	var all []string
	for _, s := range spans {
		all = append(all, fmt.Sprintf("%d:%02d-%d:%02d", int(s.From.Hours()), int(s.From.Minutes())%60, int(s.To.Hours()), int(s.To.Minutes())%60))
	}
	return strings.Join(all, ", ")
}

type conversation struct {
	ctx    context.Context
	out    io.Writer
	lines  chan string
	values form.Values
	today  place.Date
}

func (c *conversation) say(text string) { fmt.Fprintln(c.out, text) }

// answer asks once. An empty answer is the usual one.
func (c *conversation) answer(question, usual string) (string, error) {
	if usual != "" {
		question += " [" + usual + "]"
	}
	if _, err := fmt.Fprint(c.out, question+": "); err != nil {
		return "", err
	}
	select {
	case <-c.ctx.Done():
		return "", c.ctx.Err()
	case line, ok := <-c.lines:
		if !ok {
			c.say("")
			return "", ErrEnded
		}
		if line = strings.TrimSpace(line); line == "" {
			return usual, nil
		}
		return line, nil
	}
}

// text returns a question for one key. Without a usual answer there must be one; where
// it is empty, the key stays empty.
func (c *conversation) text(key form.AnyKey, question string, usual func() string) func() error {
	return func() error {
		field, _ := school.Settings().Field(key.Name())
		for !key.In(c.values) {
			before := ""
			if usual != nil {
				before = usual()
			}
			answer, err := c.answer(question, before)
			if err != nil {
				return err
			}
			if answer == "" && usual != nil {
				return nil
			}
			v, complaint := field.ParseText(strings.Trim(answer, `"`))
			if complaint != "" {
				c.say("  " + key.Name() + " " + complaint)
				continue
			}
			c.values[key.Name()] = v
		}
		return nil
	}
}

// lastDay asks for the last day, which is not before the first.
func (c *conversation) lastDay() error {
	for given := school.TermLastDay.In(c.values); ; given = false {
		if err := c.text(school.TermLastDay, "last day of the unit", nil)(); err != nil {
			return err
		}
		first, last := school.TermFirstDay.Of(c.values), school.TermLastDay.Of(c.values)
		if given || !last.Before(first) {
			return nil
		}
		c.say(fmt.Sprintf("  the last day %s is before the first, %s", last, first))
		delete(c.values, school.TermLastDay.Name())
	}
}

// where asks for the place and the zone until the Sun's noon there is right by its
// clock. Somebody who writes the same twice is taken at their word.
func (c *conversation) where() error {
	if school.Latitude.In(c.values) && school.Longitude.In(c.values) && school.TimeZone.In(c.values) {
		if doubt, ok := school.DoubtedPlace(c.values, c.today); ok {
			c.say("  " + doubt.Text)
			c.forget()
		} else {
			return nil
		}
	}
	was := ""
	for {
		if err := c.place(); err != nil {
			return err
		}
		if err := c.text(school.TimeZone, "time zone of its clocks, such as America/Moncton", nil)(); err != nil {
			return err
		}
		right, err := c.confirmed(was)
		if right || err != nil {
			return err
		}
		was = c.whereabouts()
		c.forget()
	}
}

func (c *conversation) forget() {
	for _, key := range []form.AnyKey{school.Latitude, school.Longitude, school.TimeZone} {
		delete(c.values, key.Name())
	}
}

func (c *conversation) whereabouts() string {
	return fmt.Sprint(school.Latitude.Of(c.values), school.Longitude.Of(c.values), school.TimeZone.Of(c.values))
}

func (c *conversation) place() error {
	for !school.Latitude.In(c.values) || !school.Longitude.In(c.values) {
		answer, err := c.answer("latitude and longitude of the school, such as 46.09 -64.77 or 46°05′N 64°46′W", "")
		if err != nil {
			return err
		}
		lat, lon, err := Place(answer, school.Language.Of(c.values) == "fr")
		if err != nil {
			c.say("  " + err.Error())
			continue
		}
		c.values[school.Latitude.Name()], c.values[school.Longitude.Name()] = rounded(lat), rounded(lon)
	}
	return nil
}

// rounded keeps five decimals of a degree, about a metre: sixtieths have endless ones.
func rounded(x float64) float64 { return math.Round(x*1e5) / 1e5 }

// confirmed says when the Sun is highest at the place, and asks whether that is right.
func (c *conversation) confirmed(was string) (bool, error) {
	if doubt, ok := school.DoubtedPlace(c.values, c.today); ok {
		c.say("  " + doubt.Text)
		if c.whereabouts() == was {
			c.say("  the same again, so it is taken as you write it")
			return true, nil
		}
		return false, nil
	}
	noon := school.SunsNoon(school.Longitude.Of(c.values), school.TimeZone.Of(c.values), c.today).Round(time.Minute)
	for {
		answer, err := c.answer(fmt.Sprintf("there the Sun is highest at %d:%02d by the clock on %d %s; is that right?", int(noon.Hours()), int(noon.Minutes())%60, c.today.Day, c.today.Month), "yes")
		if err != nil {
			return false, err
		}
		switch strings.ToLower(answer) {
		case "yes", "y", "oui", "o":
			return true, nil
		case "no", "n", "non":
			return false, nil
		}
		c.say("  " + strconv.Quote(answer) + " is neither yes nor no")
	}
}
