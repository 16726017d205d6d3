package source

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"noonbook/build/form"
	"noonbook/build/school"
)

// Stem returns the name of the lesson's file without folder and ending, "6-telescope",
// by which a day and unit.leave_out name it.
func (l *Lesson) Stem() string { return stemOf(l.name) }

func stemOf(name string) string { return strings.TrimSuffix(path.Base(name), path.Ext(name)) }

// unnumbered is a stem without the number that it begins with, and the hyphen behind
// it.
func unnumbered(stem string) string {
	if rest := strings.TrimLeft(stem, "0123456789"); strings.HasPrefix(rest, "-") && rest != "-" {
		return rest[1:]
	}
	return stem
}

// leaveOut takes out of the unit the lessons that unit.toml leaves out and those that
// are drafts. names are the files of the folder; one that could not be read is reported
// already.
func (r *reader) leaveOut(names []string) {
	for i, given := range school.UnitLeaveOut.Of(r.unit.Settings) {
		wanted := strings.ToLower(strings.TrimSuffix(given, ".md"))
		var met, stems []string
		for _, name := range names {
			stem := strings.ToLower(stemOf(name))
			stems = append(stems, stemOf(name))
			if stem == wanted {
				met = []string{name}
				break
			}
			if unnumbered(stem) == wanted {
				met = append(met, name)
			}
		}
		at := r.unit.SettingPlace(school.UnitLeaveOut, i)
		switch {
		case len(met) == 0:
			r.problems.Add(at, "unit.leave_out: there is no lesson %q%s", given, form.Meant(given, append(stems, mapped(stems, unnumbered)...)))
			continue
		case len(met) > 1:
			r.problems.Add(at, "unit.leave_out: %q is %s; write which", given, strings.Join(mapped(met, stemOf), " or "))
			continue
		}
		if i := slices.IndexFunc(r.unit.Lessons, func(l *Lesson) bool { return l.name == met[0] }); i >= 0 {
			r.leave(r.unit.Lessons[i], "leave_out")
		}
	}
	for _, l := range slices.Clone(r.unit.Lessons) {
		if BlockDraft.Of(l.Block) {
			r.leave(l, "draft")
		}
	}
}

func mapped(list []string, to func(string) string) []string {
	var out []string
	for _, s := range list {
		out = append(out, to(s))
	}
	return out
}

// untie lets go what a lesson asks of the time since one that was left out.
func (r *reader) untie(l, gone *Lesson) {
	l.loose = true
	r.unit.Gone = append(r.unit.Gone, fmt.Sprintf("what %s asks of the days since %s", l.Stem(), gone.Stem()))
}
