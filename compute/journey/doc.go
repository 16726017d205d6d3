// Package journey reckons ways between worlds by the least-energy transfer of W.
// Hohmann: half an ellipse round the Sun that touches the Earth's way at one end
// and the goal's at the other, without further engines; and when the planets stand
// so that it ends where the goal is.
//
//	mars, _ := world.Find("mars")
//	t, ok := journey.To(mars)                         // t.Time 259 days, t.Leave 2.9 km/s
//	journey.Synodic(mars)                             // 780 days from window to window
//	w, ok := journey.NextWindow(mars, time.Now())     // w.Leave, w.Arrive
//
// # Mathematics
//
// With axis a = (r₁+r₂)/2 and the Sun's μ, the way takes π√(a³/μ); speeds follow
// from v² = μ(2/r − 1/a), vis-viva. To takes circles in one plane with the mean
// distances. NextWindow takes the places of the almanac: it finds the day on which
// the goal, after a transfer between the real distances of that day and of the
// arrival, is half a turn from where the Earth was.
//
// # Accuracy and range
//
// To is what textbooks print, to their digits. A window is an idea of a day: real
// craft leave some weeks to either side, on arcs shorter or longer than half a turn,
// because the orbits are tilted and a rocket has some energy to spare; to Mars the
// launches since 1996 lie within 50 days. Real craft to Mercury and beyond Mars save
// fuel by passing other planets on the way and take other times. Windows are for
// 1950 to 2100, departure and arrival.
//
// # What it does not do
//
// Leaving and landing, passages of planets, tilted orbits, the way back, comets.
//
// # Sources
//
// Bate, Mueller & White, Fundamentals of Astrodynamics, 1971, sections 1.8 and 8.3;
// H. D. Curtis, Orbital Mechanics for Engineering Students, 3rd ed. 2013, sections
// 8.2 and 8.3. Sun's μ: 1.32712440018e11 km³/s² (DE405); from memory.
package journey
