package source

import (
	"noonbook/build/form"
	"noonbook/build/school"
)

// knownWay reports a way without its length, or a length without its way. One whose
// length cannot be has been reported.
func (r *reader) knownWay(values form.Values) {
	to, km := school.WayTo.Of(values) != "", school.WayKm.In(values)
	_, written := r.unit.places[school.WayKm.Name()]
	switch {
	case to && !km && !written:
		r.problems.Add(r.unit.SettingPlace(school.WayTo), "%s goes with %s, which is missing", school.WayTo, school.WayKm)
	case km && !to:
		r.problems.Add(r.unit.SettingPlace(school.WayKm), "%s goes with %s, which is missing", school.WayKm, school.WayTo)
	}
}
