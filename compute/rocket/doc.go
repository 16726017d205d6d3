// Package rocket follows a paper rocket that is stamped off a pipe: how high, how
// far and how fast, what was measured of it, whether it flies straight, and what
// its parts look like before they are rolled.
//
//	air, err := rocket.Still(quantity.Metres(20), 12)   // density at 20 m and 12 °C
//	paper := rocket.Rocket{Mass: rocket.Grams(5), Diameter: quantity.Millimetres(23), Drag: 0.6}
//	flight, err := rocket.Fly(paper, rocket.Launch{Speed: 20, Elevation: quantity.Degrees(75)}, air)
//	far, angle, err := rocket.Farthest(paper, rocket.Launch{Speed: 20}, air, 0, quantity.Degrees(90))
//	height, err := rocket.OneStation(quantity.Degrees(35), quantity.Metres(15), quantity.Metres(1.4), rocket.Care{})
//
// # Flight
//
// A point of mass m in steady, level wind w, with drag that grows as the square
// of the speed through the air u = v − w:
//
//	dv/dt = −g ẑ − k |u| u,   k = ρ C A / 2m
//
// C is the drag coefficient on the area A of the tube's cross-section and ρ the
// density of the air, taken as constant through the flight. It is integrated by
// the Runge–Kutta pair of Dormand and Prince, order 5 with an error estimate of
// order 4, in steps that hold the estimate below 1e-9 of each variable (1 m and
// 1 m/s at least). Apogee and landing are found by shortening the last step until
// the step itself ends on them, so that they are as good as the steps. Against
// scipy's DOP853 at a tolerance of 1e-13 the worst difference of the tests' table
// is stated there; 1e-6 of each value is the promise.
//
// # Frames, signs, units
//
// The launcher's foot is the origin; along is level in the direction in which the
// rocket leans, across is level to the right of it, up is up. Wind is where the
// air goes: positive along is a tail wind. An Elevation is 0° for level and 90°
// for straight up. Lengths and angles are those of compute/quantity; speeds,
// masses and densities are the types of this package, in m/s, kg and kg/m³.
//
// # Accuracy and range
//
// Speeds up to MaxSpeed, 100 m/s (0.3 of the speed of sound, where C begins to
// change), and heights of which the air's density does not notice: a hundred
// metres are 1 % of it. C of a paper rocket is poorly known, 0.4 to 1 by common
// practice, and is the largest doubt in every height and reach; a wobbling rocket
// has more. NoAir is what no rocket can pass in still air, and needs no C: NoAirReach,
// NoAirSteepEnough and NoAirSlowEnough are in closed form. Gravity is the
// standard one, from which a place differs by up to 0.3 %.
//
// Stability is Barrowman's method for a cone, a cylinder and three or more flat
// fins at a small angle to the wind, slower than sound: it gives the centre of
// pressure to a few per cent of the length for slender rockets, and says nothing
// of crooked fins.
//
// # Comparing rockets
//
// Heights of repeated flights are Series. Scatter is the standard deviation that
// they share, Doubt how far a difference of two means may be wrong, by Student's
// t. It is meant for two rockets that were chosen before the flights; of many,
// the best one looks better than it is.
//
// # What it does not do
//
// The push in the pipe, gusts, the slope of the field, lift, spin, bouncing.
// It gives no safe distance: no authority was found that states one for a stamped
// launcher. It gives the reach; the margin is the school's.
//
// # Sources
//
// Standard gravity 9.806 65 m/s²: 3rd CGPM (1901). Standard atmosphere: ISO
// 2533:1975, U.S. Standard Atmosphere 1976, layer below 11 km. Dormand and Prince,
// J. Comp. Appl. Math. 6 (1980), 19, their table 2, coefficients as in Hairer,
// Nørsett and Wanner, Solving Ordinary Differential Equations I, table II.5.2.
// Two stations: NASA Glenn Research Center, Beginner's Guide to Rockets, height
// from two observers. Centre of pressure: J. S. Barrowman, The Practical
// Calculation of the Aerodynamic Characteristics of Slender Finned Vehicles
// (thesis, 1967), in the form of Technical Information Report 33, from memory.
package rocket
