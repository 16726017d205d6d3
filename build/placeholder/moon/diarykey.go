package moon

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

// moonDiaryKey is what the drawings of moon-diary should show, for the teacher, without a
// second sheet to print.
func moonDiaryKey() entry.Entry {
	diary := moonDiary()
	return entry.Entry{
		Name:      "moon-diary-key",
		Summary:   "What the drawings of moon-diary should show: the Moon at the diary's time of each day.",
		Arguments: diary.Arguments.Pick(entry.Date, argWeeks, argEarliest, argLatest, argAltitudeDeg),
		Settings:  diary.Settings,
		Facts: []entry.Fact{
			{Name: "moons", Doc: "days of the diary on which the Moon can be looked for, as many as moon-diary has"},
		},
		Sources:  diary.Sources,
		Cautions: diary.Cautions,
		Reckon:   reckonMoonDiaryKey,
	}
}

func reckonMoonDiaryKey(v form.Values) (result.Result, error) {
	p := school.Place(v)
	looks, edge, err := diaryLooks(v, p)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:    "days",
		Title:   say.Line("moon-diary-key.title", say.Date(looks[0].Date), say.Date(looks[len(looks)-1].Date)),
		Columns: []result.Column{{Name: "date"}, {Name: "at"}, {Name: "direction"}, {Name: "altitude", Unit: "deg"}, {Name: "lit", Unit: "percent"}, {Name: "lit_side"}},
	}
	for _, l := range looks {
		if l.from > withAdult {
			continue
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.Weekday(l.Date), say.Clock(l.Best.In(p.Zone)), entry.Toward(l.Where.Azimuth), say.Number(entry.AsSeen(l.Where.Altitude).Degrees(), "deg", 0),
			entry.Percent(l.Limb.Lit), entry.LitSide(l.Limb.Side),
		}})
	}
	r := result.Result{Facts: []result.Fact{{Name: "moons", Value: say.Count(len(table.Rows))}}, Notes: edge}
	if len(table.Rows) > 0 {
		r.Tables = []result.Table{table}
	}
	return r, nil
}
