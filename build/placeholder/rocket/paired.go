package rocket

import (
	"math"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/rocket"
)

// A paired test is one in which every group flew both rockets once: what differs between
// groups drops out of each pair.
type paired struct {
	first, second compared // the two rockets, in the order of their values
	groups        []string // that flew both
	differences   rocket.Pairs
	heights       [][2]rocket.Height // by group
}

// pairedFacts are the facts that only a test in pairs has.
var pairedFacts = []entry.Fact{
	{Name: "pairs", Doc: "groups that flew both rockets once; none where some group flew one of them again"},
	{Name: "pairs_best", Doc: "pairs in which the rocket went higher that went higher on the whole"},
	{Name: "pairs_other", Doc: "pairs in which the other one did"},
	{Name: "pair_difference", Unit: "m", Doc: "mean difference within the pairs"},
	{Name: "pair_doubt", Unit: "m", Doc: "how far that may be wrong, in 95 of 100 tests"},
	{Name: "pair_luck", Unit: "percent", Doc: "in how many of 100 tests without any difference so many pairs or more would go the same way"},
}

const sourcePaired = "Pairs: Student's paired test, 95 % (Biometrika 6, 1908); the sign test for those that went the same way"

// pairedOf finds the pairs, false where the flights are not of that kind: two rockets,
// more than one group, no flight repeated, and both rockets flown by two groups at least.
func pairedOf(flights []flown, rockets []compared, by int) (p paired, ok bool) {
	groups := flownGroups(flights)
	if len(rockets) != 2 || len(groups) < 2 {
		return p, false
	}
	p.first, p.second = rockets[0], rockets[1]
	for _, group := range groups {
		var of [2][]rocket.Height
		for _, f := range flights {
			if f.group != group {
				continue
			}
			n := 0
			if f.design[by] == p.second.value {
				n = 1
			}
			of[n] = append(of[n], f.height)
		}
		switch {
		case len(of[0]) > 1 || len(of[1]) > 1:
			return p, false
		case len(of[0]) == 1 && len(of[1]) == 1:
			p.groups = append(p.groups, group)
			p.heights = append(p.heights, [2]rocket.Height{of[0][0], of[1][0]})
			p.differences = append(p.differences, of[1][0].Value-of[0][0].Value)
		}
	}
	return p, len(p.groups) > 1
}

// best is the rocket that went higher on the whole, and the other one.
func (p paired) best() (best, other compared) {
	if p.differences.Mean() < 0 {
		return p.first, p.second
	}
	return p.second, p.first
}

// ways are the pairs in which the best rocket went higher, and the other one.
func (p paired) ways() (best, other int) {
	up, down := p.differences.Ways()
	if p.differences.Mean() < 0 {
		return down, up
	}
	return up, down
}

func (p paired) facts() []result.Fact {
	best, other := p.ways()
	return []result.Fact{
		{Name: "pairs", Value: say.Count(len(p.groups))},
		{Name: "pairs_best", Value: say.Count(best)},
		{Name: "pairs_other", Value: say.Count(other)},
		{Name: "pair_difference", Value: say.Metres(max(p.differences.Mean(), -p.differences.Mean()), 1)},
		{Name: "pair_doubt", Value: say.Metres(p.differences.Doubt(), 1)},
		{Name: "pair_luck", Value: entry.Percent(p.differences.Luck())},
	}
}

// noPairs are those facts where the flights are not in pairs.
func noPairs() []result.Fact {
	facts := []result.Fact{{Name: "pairs", Value: say.Count(0)}}
	for _, f := range pairedFacts[1:] {
		facts = append(facts, result.Fact{Name: f.Name, Value: say.None("rocket-log.no_pairs")})
	}
	return facts
}

// finding says what the pairs show, in the place of what the two means show.
func (p paired) finding(by int) say.Value {
	best, other := p.best()
	higher, _ := p.ways()
	gap, off := max(p.differences.Mean(), -p.differences.Mean()), p.differences.Doubt()
	key := "rocket-log.found_pairs_nothing"
	if gap > off && !math.IsInf(off.Metres(), 1) {
		key = "rocket-log.found_pairs"
	}
	return say.Words(key, best.name(by), other.name(by), say.Count(higher), say.Count(len(p.groups)), say.Metres(gap, 1), say.Metres(off, 1))
}

// table has the pairs, a group a line.
func (p paired) table(by int) result.Table {
	table := result.Table{
		Name: "pairs", Title: say.Line("rocket-log.title_pairs", p.first.name(by), p.second.name(by)),
		Columns: []result.Column{{Name: "group"}, {Name: "first", Unit: "m"}, {Name: "second", Unit: "m"}, {Name: "difference", Unit: "m"}},
	}
	for i, group := range p.groups {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Text(group), say.Metres(p.heights[i][0].Value, 1), say.Metres(p.heights[i][1].Value, 1), say.Metres(p.differences[i], 1),
		}})
	}
	return table
}

// note says what the pairs are, and how often luck alone does as much.
func (p paired) note() say.Phrase {
	same := max(p.differences.Ways())
	return say.Line("rocket-log.note_pairs", say.Count(same), say.Count(len(p.groups)), entry.Percent(p.differences.Luck()))
}
