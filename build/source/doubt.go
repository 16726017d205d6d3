package source

import "noonbook/build/school"

// doubts warns of settings that are allowed and hardly right.
func (r *reader) doubts() {
	for _, d := range school.Doubts(r.unit.Settings) {
		at := r.unit.SettingPlace(d.Key)
		if d.Item >= 0 {
			at = r.unit.SettingPlace(d.Key, d.Item)
		}
		r.problems.Warn(at, "%s", d.Text)
	}
}
