package district

import (
	"bytes"
	"html/template"
	"net/url"
	"slices"
	"strings"

	"noonbook/build/crew"
	"noonbook/build/plan"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

// A surveyed is what the board's page says of a school, besides what is in its row.
type surveyed struct {
	bad                 bool
	latitude, longitude float64
	language            string
	first, last         place.Date
}

// survey checks every row of the list, also those of other parts, since the page is of all.
func (d *District) survey() ([]surveyed, error) {
	all := make([]surveyed, len(d.list.rows))
	errs := make([]error, len(all))
	crew.Each(len(all), nil, func(i int) {
		_, v, problems, err := d.checked(&d.list.rows[i])
		errs[i] = err
		all[i] = surveyed{problems.Faults() > 0, school.Latitude.Of(v), school.Longitude.Of(v), school.Language.Of(v), school.TermFirstDay.Of(v), school.TermLastDay.Of(v)}
	})
	i := slices.IndexFunc(errs, func(err error) bool { return err != nil })
	if i >= 0 {
		return nil, errs[i]
	}
	return all, nil
}

// page is the board's page: every school with its place, and a map of them. It is made
// from the list and from what is asked for, and from nothing that was pressed, so that
// each part of a list gives the same page.
func (d *District) page(o Order, schools []surveyed) ([]byte, error) {
	settings := d.list.keys.Complete(d.base)
	w, err := d.unit.Words(settings)
	if err != nil {
		return nil, err
	}
	templates, err := typeset.Templates(w)
	if err != nil {
		return nil, err
	}
	page := typeset.DistrictPage{
		Words: w,
		Unit:  w.Typeset(school.UnitTitle.Of(settings)),
		Lead:  w.Say("district.lead", say.Count(len(schools))),
		Staff: o.Staff,
		Map:   template.HTML(w.AppendDrawing(nil, d.plate(schools))),
	}
	for i, s := range schools {
		row := &d.list.rows[i]
		name, at, _ := d.list.cell(row, school.Name.Name())
		if name == "" {
			name = school.Name.Of(settings)
		}
		if name == "" {
			name = row.folder
		}
		town, _, _ := d.list.cell(row, townHead)
		line := typeset.DistrictRow{School: w.Typeset(name), Town: w.Typeset(town)}
		if s.bad {
			line.Bad = w.Say("district.bad", say.Count(at.Line))
			page.Rows = append(page.Rows, line)
			continue
		}
		line.Where = w.Text(latitude(s.latitude, 0.1)) + ", " + w.Text(longitude(s.longitude, 0.1))
		line.Language = w.Say("district." + s.language)
		line.Term = w.Say("cover.term", say.Text(w.DayMonth(s.first.UTC())), say.Date(s.last))
		for _, part := range o.parts(row.folder) {
			link := typeset.Link{Title: part, File: href(o, part)}
			if strings.HasPrefix(part, row.folder+suffix(plan.Staff)) {
				line.Staff = append(line.Staff, link)
			} else {
				line.Class = append(line.Class, link)
			}
		}
		page.Rows = append(page.Rows, line)
	}
	var out bytes.Buffer
	if err := typeset.WriteDistrict(&out, templates, page); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// href is where a part is, from the board's page.
func href(o Order, part string) string {
	to := "./" + (&url.URL{Path: part}).EscapedPath()
	if !o.Zip && !strings.HasSuffix(part, ".html") {
		to += "/index.html"
	}
	return to
}
