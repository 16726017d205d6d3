// Package flow says how clocks that run out run: water through a small hole near the
// foot of a bottle, and sand through a hole between two bottles.
//
//	v := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: flow.SharpEdged}
//	r, err := v.Run(mm(180), mm(30))      // from 180 mm above the hole down to 30 mm
//	r.Lasts                               // 6 min 16 s
//	r.Height(time.Minute)                 // 147.6 mm: the first mark
//	g := flow.Glass{Hole: mm(4), Grain: mm(0.4), Bulk: flow.DrySand, Coefficient: flow.Beverloo}
//	g.Rate().GramsAMinute()               // 113, full or nearly empty
//
// # Water
//
// A jet leaves a small hole with the speed √(2 g h) that a fall from the water's level
// would give it (E. Torricelli, De motu gravium, Florence 1644). The jet is narrower
// than the hole and a little slower, so that of the hole's area a only c·a counts, where c
// is the discharge coefficient. In a vessel with upright walls of area A the level h
// sinks by
//
//	A dh/dt = −c a √(2 g h),   so   h(t) = (√h₀ − k t)²,   k = c (a/A) √(g/2)
//
// The square root falls evenly, the level does not: as the water sinks, its weight pushes
// less and it runs more slowly. Between two levels only the time that it takes matters
// (Run): a clock whose run was timed needs neither the bottle, nor the hole, nor c.
//
// # Where that ends
//
// Heights are above the middle of the hole, and positive. The walls are upright: a
// shoulder or a waist is not. The hole is at most a quarter of the width, so that the
// speed of the sinking level, left out, changes nothing that could be seen (1 in 500).
//
// The coefficient is that of a hole with a sharp edge in a thin wall; for one that is a
// short tube, as in a thick cap, it is a third more (ShortTube). Both are values for
// Reynolds numbers v d/ν above some ten thousand. In a hole of 2 mm they are a few
// thousand or less; there the coefficient of a sharp edge is a few hundredths larger and
// changes with the level, and with it the water's temperature counts, since ν falls from
// 1.3 mm²/s at 10 °C to 0.66 mm²/s at 40 °C (from memory). A tenth of a millimetre in the
// width of such a hole changes the flow by 10 %. So a computed clock is a first guess, and
// the timed one is right.
//
// Surface tension holds water back behind a hole: below a level of about 4 σ/(ρ g d), 15 mm
// for a hole of 2 mm, a hanging drop carries it, and well before that the jet breaks into
// drops (Vessel.Held). Runs end at twice that level; twice is our own choice.
//
// # Sand
//
// Sand runs as evenly when there is little as when there is much: the walls carry its
// weight (H. A. Janssen, Zeitschrift des Vereines deutscher Ingenieure 39, 1895, 1045), and
// only the grains just above the hole fall freely. The mass in a second is
//
//	W = C ρ √g (D − k d)^(5/2)
//
// for a round hole of width D, grains of width d and poured sand of density ρ: W. A.
// Beverloo, H. A. Leniger and J. van de Velde, Chemical Engineering Science 15 (1961),
// 260. C is 0.58 and k is 1.4, from memory; others find C from 0.55 to 0.65 and k from 1.3
// to 2.9 for sand, so the flow of a sand that nobody timed is good to a fifth at best.
// Below about six grains the hole clogs. It holds for dry sand of one size, not for powder
// or damp sand, which cling, and where air can get out of the lower bottle: against air that
// must come up through the hole sand runs more slowly and by fits.
package flow
