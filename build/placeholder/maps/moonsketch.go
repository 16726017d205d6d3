package maps

import (
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

const sourceSketch = "Outlines of large seas, lines of mountains, cliffs and valleys: sketched for this book round the places of the Gazetteer"

// moonOutlines are the seas that no circle looks like, as a sketch: corners of longitude and
// latitude in degrees, drawn for this book. A shore is a matter of taste by some degrees.
func moonOutlines() map[string][][2]float64 {
	return map[string][][2]float64{
		"Oceanus Procellarum": {
			{-46, 54}, {-58, 50}, {-66, 44}, {-70, 36}, {-73, 27}, {-72, 17}, {-69, 9}, {-66, 2}, {-60, -7}, {-54, -13}, {-45, -16},
			{-37, -12}, {-29, -9}, {-22, -6}, {-20, -3}, {-22, 0}, {-28, 3}, {-35, 5}, {-40, 10}, {-40, 16}, {-36, 22}, {-35, 28}, {-39, 36}, {-43, 44},
		},
		"Mare Tranquillitatis": {
			{17, 5}, {18, 11}, {20, 16}, {26, 18}, {33, 19}, {39, 17}, {43, 12}, {46, 6}, {44, 2}, {39, -1}, {34, -4}, {28, -6}, {25, -3}, {21, 0},
		},
		"Mare Fecunditatis": {
			{46, 3}, {51, 5}, {57, 3}, {61, -1}, {60, -7}, {60, -13}, {57, -18}, {52, -22}, {48, -18}, {45, -13}, {41, -9}, {41, -4}, {43, 0},
		},
		"Mare Nubium": {
			{-6, -15}, {-6, -20}, {-8, -25}, {-12, -30}, {-20, -31}, {-27, -28}, {-30, -22}, {-28, -16}, {-21, -14}, {-13, -12},
		},
		"Mare Frigoris": {
			{-46, 56}, {-32, 60}, {-16, 62}, {0, 62}, {14, 61}, {26, 58}, {36, 55}, {42, 52}, {36, 50}, {26, 53}, {12, 56}, {0, 56}, {-12, 56}, {-22, 55}, {-34, 54},
		},
	}
}

// moonStrokes are the lines of what is long and narrow, as sketched for this book.
func moonStrokes() map[string][][2]float64 {
	return map[string][][2]float64{
		"Montes Apenninus": {{-8.5, 15.5}, {-5, 16.8}, {-1.5, 18.8}, {1.5, 21.5}, {3, 24}, {5.5, 27}},
		"Montes Caucasus":  {{8, 32}, {9.5, 35}, {9.5, 38.5}, {13, 43}},
		"Montes Alpes":     {{4.5, 45.3}, {1, 47}, {-2, 49.5}, {-5.5, 51.5}},
		"Montes Jura":      {{-27, 48}, {-31, 50}, {-36, 49.5}, {-40, 47}, {-40.5, 44}},
		"Montes Carpatus":  {{-28.5, 14.2}, {-24, 14.8}, {-18.5, 15.3}},
		"Montes Haemus":    {{6.5, 14.5}, {9.5, 16.5}, {13, 18}, {17.5, 20}},
		"Montes Riphaeus":  {{-26.5, -4.8}, {-27.6, -7.5}, {-28.3, -10.3}},
		"Vallis Alpes":     {{0.2, 48.3}, {3.6, 49.2}, {7, 50.2}},
		"Rupes Recta":      {{-8.4, -20}, {-7.7, -21.7}, {-7, -23.4}},
		"Rupes Altai":      {{18, -17.5}, {19, -21}, {22, -24.5}, {26.5, -27.5}, {31.5, -29}},
		"Rima Hadley":      {{2.2, 24.2}, {3.2, 25.4}, {3.4, 26.3}, {4.2, 27.2}},
	}
}

// rayed are the craters that are bright when the Sun is high, with rays round them: common
// practice, no source.
var rayed = []string{"Tycho", "Copernicus", "Kepler", "Aristarchus", "Proclus"}

func onMoon(lonLat [2]float64) globe.Point {
	return globe.Point{Latitude: quantity.Degrees(lonLat[1]), Longitude: quantity.Degrees(lonLat[0])}
}

// isSea reports whether a feature is a plain of lava.
func isSea(s globe.Spot) bool {
	switch s.Kind {
	case "oceanus", "mare", "sinus", "lacus":
		return true
	}
	return false
}

// shore returns the outline of a sea: the sketch, rounded off, or a circle as wide as the
// Gazetteer says.
func shore(s globe.Spot) []globe.Point {
	sketch, ok := moonOutlines()[s.Name]
	if !ok {
		return globe.Ring(s.At, globe.Moon.Arc(s.Across)/2, 40)
	}
	const between = 5
	n := len(sketch)
	points := make([]globe.Point, 0, between*n)
	for i := range sketch {
		a, b, c, d := sketch[(i+n-1)%n], sketch[i], sketch[(i+1)%n], sketch[(i+2)%n]
		for k := range between {
			points = append(points, onMoon(bent(a, b, c, d, float64(k)/between)))
		}
	}
	return points
}

// bent is a point between b and c of the smooth curve through four: E. Catmull and R. Rom,
// in Computer Aided Geometric Design (1974), 317.
func bent(a, b, c, d [2]float64, t float64) (p [2]float64) {
	for i := range p {
		p[i] = (2*b[i] + (c[i]-a[i])*t + (2*a[i]-5*b[i]+4*c[i]-d[i])*t*t + (3*b[i]-a[i]-3*c[i]+d[i])*t*t*t) / 2
	}
	return p
}
