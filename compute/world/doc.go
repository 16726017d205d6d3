// Package world holds what is known of the planets, the Moon, Ceres, Pluto and
// one comet, 67P/Churyumov–Gerasimenko: size, mass, days and years, warmth, moons,
// names to look for; and what follows from these.
//
//	mars, _ := world.Find("mars")
//	mars.Gravity()                     // 3.71 m/s²
//	mars.SolarDay()                    // 24 h 40 min, noon to noon
//	mars.Jump(0.3).Metres              // 0.79: as high as the jump of 0.3 m here
//	sight, ok := mars.At(time.Now())   // how far it is
//
// # What is measured and what is computed
//
// Measured: radii, GM (the pull, which spacecraft feel far better than a mass),
// turn, year, tilt, moons, temperatures. Computed from these: mass (GM/G),
// density (over the sphere of the mean radius), gravity (GM/r² at the equator),
// escape speed (√(2GM/r)), the day from noon to noon (1/(1/turn ∓ 1/year)),
// ages, jumps and throws. Tests hold the computed ones against published fact
// sheets, which print them too.
//
// # Signs and units
//
// Tilts run from 0° to 180°, beyond 90° a world turns backwards; turns are
// always positive. Lengths are quantity.Length; GM is in km³/s², temperatures in
// kelvin, speeds in m/s. Latitudes are north, longitudes east positive, within
// half a turn.
//
// # Accuracy and range
//
// Radii, GM, turns and years are good to their last digit but one; tilts of Ceres
// and the comet to a degree. Temperatures are round numbers for a talk. Numbers of
// moons hold for MoonsAsOf alone. Places of features are whole degrees. Distances
// at a moment: see At. A jump and a throw are without air, on level ground, at the
// same take-off speed as on the Earth; a jump follows the pull as it weakens with
// height, a throw does not.
//
// # What it does not do
//
// The other moons, rings, asteroids; weather; flattening within gravity. It has no
// words: descriptions stand in the words files of the theme under a feature's key.
//
// # Sources
//
// Each column's stands at All, those of orbits at the tables.
package world
