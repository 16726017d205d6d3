package optics

import (
	"cmp"
	"fmt"
	"slices"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// A stocked is a kind of tube in the school's stock.
type stocked struct {
	lens.Tube
	label say.Value
	count int
}

// tubeStock returns the kinds of tubes that the settings name.
func tubeStock(v form.Values) ([]stocked, error) {
	var stock []stocked
	for _, one := range school.StockTubes.Of(v) {
		t := stocked{
			Tube: lens.Tube{
				Inside:  quantity.Millimetres(school.TubesInsideMM.Of(one)),
				Outside: quantity.Millimetres(school.TubesOutsideMM.Of(one)),
				Length:  quantity.Millimetres(school.TubesLengthMM.Of(one)),
			},
			label: say.Text(school.TubesLabel.Of(one)), count: school.TubesCount.Of(one),
		}
		if t.Outside <= t.Inside {
			return nil, fmt.Errorf("tube %q of stock.tubes: its outside of %g mm is not wider than its inside of %g mm: measure both across the end",
				school.TubesLabel.Of(one), school.TubesOutsideMM.Of(one), school.TubesInsideMM.Of(one))
		}
		stock = append(stock, t)
	}
	return stock, nil
}

// A plan is the best way to cut a telescope's tubes from the stock.
type plan struct {
	lens.Cut
	fit          lens.Fit
	outer, inner stocked
	lapped       bool // the inner tube is one of the outer kind, slit and closed narrower
	assumed      bool // no tubes are in stock: the lengths hold for any that slide
}

// wall is the thickness of a cardboard tube nobody has measured.
const wall = quantity.Length(0.0015)

// planTubes tries every pair of kinds, a kind slit to slide in itself too, and
// returns the best: one that fits before one that does not, with the fewest tubes,
// unslit, with the least play.
func planTubes(t lens.Telescope, d lens.Demand, stock []stocked) (plan, error) {
	var plans []plan
	try := func(p plan) error {
		var err error
		if p.Cut, p.fit, err = t.CutTubes(d, p.outer.Tube, p.inner.Tube); err == nil {
			plans = append(plans, p)
		}
		return err
	}
	if len(stock) == 0 {
		inside := t.Front.Diameter
		err := try(plan{
			outer:   stocked{Tube: lens.Tube{Inside: inside, Outside: inside + 2*wall, Length: lens.Infinity}},
			inner:   stocked{Tube: lens.Tube{Inside: inside - 3*wall, Outside: inside - wall, Length: lens.Infinity}},
			assumed: true,
		})
		if err != nil {
			return plan{}, err
		}
		return plans[0], nil
	}
	for i, outer := range stock {
		for j, inner := range stock {
			p := plan{outer: outer, inner: inner}
			if i == j {
				p.lapped, p.inner.Tube = true, outer.Lapped()
			}
			if err := try(p); err != nil {
				return plan{}, err
			}
		}
	}
	rank := func(p plan) int {
		return [...]int{lens.Fits: 0, lens.TooLong: 1, lens.TooShort: 2, lens.TooLoose: 3, lens.TooWide: 4}[p.fit]
	}
	best := slices.MinFunc(plans, func(a, b plan) int {
		return cmp.Or(
			cmp.Compare(rank(a), rank(b)),
			cmp.Compare(a.OuterTubes+a.InnerTubes, b.OuterTubes+b.InnerTubes),
			cmp.Compare(order(a.lapped), order(b.lapped)),
			cmp.Compare(a.Play, b.Play))
	})
	return best, nil
}

func order(last bool) int {
	if last {
		return 1
	}
	return 0
}
