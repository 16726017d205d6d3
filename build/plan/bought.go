package plan

import (
	"cmp"
	"slices"
	"strings"

	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/classroom"
)

// boughtLate warns of things that a lesson takes from the school and that are bought for
// a later lesson, by the days on which they are held: the list would send nobody to the
// shop in time.
func (p *Plan) boughtLate(s *pressing, problems *problem.List) {
	type use struct {
		lesson int
		bought bool
		row    int
	}
	uses := map[string][]use{}
	for i, l := range s.lessons {
		for row, thing := range l.Kit {
			if name := strings.ToLower(thing.Item); s.calendar.Held[i].Placed && thing.Source != classroom.FromHome {
				uses[name] = append(uses[name], use{i, thing.Source == classroom.ToBuy, row})
			}
		}
	}
	taught := p.taught()
	for _, list := range uses {
		slices.SortStableFunc(list, func(a, b use) int {
			x, y := s.calendar.Held[a.lesson], s.calendar.Held[b.lesson]
			return cmp.Or(x.Date.UTC().Compare(y.Date.UTC()), cmp.Compare(x.From, y.From))
		})
		first := slices.IndexFunc(list, func(u use) bool { return u.bought })
		if first < 0 {
			continue
		}
		for _, u := range list[:first] {
			if later := list[first].lesson; u.lesson != later {
				l := taught[u.lesson]
				problems.Warn(l.RowPlace(source.BlockKit, u.row, source.KitItem), "lesson: kit: %q is from the school here, and is bought only for lesson %d, %q, on %s; write source = \"buy\" here too, or the same source in both",
					s.lessons[u.lesson].Kit[u.row].Item, later+1, taught[later].Title(), s.calendar.Held[later].Date)
			}
		}
	}
}
