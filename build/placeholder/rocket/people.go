package rocket

import (
	"noonbook/build/result"
	"noonbook/build/say"
)

// A job on the field. want is how many pupils do it, in the order in which they
// are given out, so that a small class keeps its zone clear before it measures;
// those who are left wait with the next crews.
type job struct {
	name, place string
	want        int
}

func jobs() []job {
	return []job{
		{"stamper", "launcher", 1}, {"loader", "launcher", 1}, {"caller", "launcher", 1},
		{"warden", "edge", 4},
		{"sighter", "station", 2}, {"reader", "station", 2},
		{"recorder", "station", 2}, {"timer", "waiting", 3}, {"wind", "edge", 1},
		{"retriever", "waiting", 2}, {"inspector", "waiting", 2},
	}
}

func peopleTable(pupils int, z zone) result.Table {
	table := result.Table{
		Name: "people", Title: say.Line("rocket-zone.people_title"),
		Columns: []result.Column{{Name: "job"}, {Name: "count"}, {Name: "place"}},
	}
	places := map[string]say.Value{
		"launcher": say.Words("rocket-zone.at_launcher"),
		"station":  say.Words("rocket-zone.at_station_wind", z.stationValue()),
		"waiting":  say.Words("rocket-zone.at_waiting_wind", z.clearValue()),
		"edge":     say.Words("rocket-zone.at_edge", z.clearValue()),
	}
	if z.sun.up {
		one, two := z.sun.stations()
		places["station"] = say.Words("rocket-zone.at_station", z.stationValue(), say.Bearing(one, 0), say.Bearing(two, 0))
		places["waiting"] = say.Words("rocket-zone.at_waiting", z.clearValue(), say.Bearing(z.sun.bearing, 0))
	}
	add := func(name string, n int, place string) {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Words(jobKey(name)), say.Count(n), places[place]}})
	}
	left := pupils
	for _, j := range jobs() {
		n := j.want
		if pupils > 0 {
			n = min(n, left)
			left -= n
		}
		if n > 0 {
			add(j.name, n, j.place)
		}
	}
	if left > 0 {
		add("next", left, "waiting")
	}
	return table
}

// peopleNote says how jobs are handed on and where those wait who have none.
func (z zone) peopleNote() say.Phrase {
	if z.sun.up {
		return say.Line("rocket-zone.note_people")
	}
	return say.Line("rocket-zone.note_people_wind")
}

func jobKey(name string) string {
	return map[string]string{
		"stamper": "rocket-zone.job_stamper", "loader": "rocket-zone.job_loader", "caller": "rocket-zone.job_caller",
		"sighter": "rocket-zone.job_sighter", "reader": "rocket-zone.job_reader", "timer": "rocket-zone.job_timer",
		"recorder": "rocket-zone.job_recorder", "wind": "rocket-zone.job_wind", "warden": "rocket-zone.job_warden",
		"retriever": "rocket-zone.job_retriever", "inspector": "rocket-zone.job_inspector", "next": "rocket-zone.job_next",
	}[name]
}
