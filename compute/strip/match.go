package strip

// A matching pairs bodies with balls. Sizes are natural logarithms of metres, so
// that a scale is a shift: a ball fits a body without error where
// ball = body + shift. Both lists are sorted by size.
type matching struct {
	bodies, balls []sized
	costs         [][]float64 // scratch: of the bodies and balls from each on
}

type sized struct {
	index   int
	size    float64
	missing float64 // cost of a body without a ball
}

type pair struct{ body, ball int }

// slack is by how much the sum of squares may miss the smallest one.
const slack = 1e-9

// best returns the shift with the cheapest pairs, by branch and bound over
// stretches of shifts. For given pairs the cost is a parabola of the shift, bent
// by their number n at most, so between two shifts 2h apart it lies less than
// n·h² below the straight line through its values there, and these are no less
// than the smallest costs at both ends. A stretch whose bound does not beat what
// has been found is dropped, any other is halved.
func (m *matching) best() (shift float64, pairs []pair, cost float64) {
	m.costs = make([][]float64, len(m.bodies)+1)
	for i := range m.costs {
		m.costs[i] = make([]float64, len(m.balls)+1)
	}
	for _, b := range m.bodies {
		cost += b.missing // of no pairs at all; any one pair at its own shift is cheaper
	}
	try := func(at float64) float64 {
		here := m.least(at)
		if found := m.chosen(at); len(found) > 0 {
			own := m.mean(found)
			if c := m.least(own); c < cost {
				shift, pairs, cost = own, m.chosen(own), c
			}
		}
		return here
	}
	type stretch struct{ from, to, costFrom, costTo float64 }
	low := m.balls[0].size - m.bodies[len(m.bodies)-1].size - 1
	high := m.balls[len(m.balls)-1].size - m.bodies[0].size + 1
	open := []stretch{{low, high, try(low), try(high)}}
	for len(open) > 0 {
		s := open[len(open)-1]
		open = open[:len(open)-1]
		half := (s.to - s.from) / 2
		if min(s.costFrom, s.costTo)-float64(len(m.bodies))*half*half >= cost-slack {
			continue
		}
		middle := s.from + half
		here := try(middle)
		open = append(open, stretch{s.from, middle, s.costFrom, here}, stretch{middle, s.to, here, s.costTo})
	}
	return m.mean(pairs), pairs, cost
}

// least returns the smallest cost at a shift. Costs grow with the square of the
// difference in size, so pairs that cross are never better than the same pairs
// in order of size, and a table over the ends of both lists finds the best.
func (m *matching) least(shift float64) float64 {
	for i := len(m.bodies) - 1; i >= 0; i-- {
		for j := len(m.balls); j >= 0; j-- {
			c := m.bodies[i].missing + m.costs[i+1][j]
			if j < len(m.balls) {
				c = min(c, m.costs[i][j+1], m.wrong(i, j, shift)+m.costs[i+1][j+1])
			}
			m.costs[i][j] = c
		}
	}
	return m.costs[0][0]
}

// wrong is the square by which a pair is wrong at a shift.
func (m *matching) wrong(body, ball int, shift float64) float64 {
	off := m.balls[ball].size - m.bodies[body].size - shift
	return off * off
}

// chosen returns the pairs behind the costs that least left for the shift.
func (m *matching) chosen(shift float64) []pair {
	var pairs []pair
	for i, j := 0, 0; i < len(m.bodies) && j < len(m.balls); {
		switch m.costs[i][j] {
		case m.costs[i][j+1]:
			j++
		case m.wrong(i, j, shift) + m.costs[i+1][j+1]:
			pairs = append(pairs, pair{i, j})
			i, j = i+1, j+1
		default:
			i++
		}
	}
	return pairs
}

// mean returns the shift at which pairs have the smallest sum of squares.
func (m *matching) mean(pairs []pair) float64 {
	sum := 0.0
	for _, p := range pairs {
		sum += m.balls[p.ball].size - m.bodies[p.body].size
	}
	return sum / float64(len(pairs))
}
