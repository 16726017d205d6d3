package district

import (
	"cmp"
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/school"
)

// The map's measures in millimetres.
const (
	mapWidth  = 180.0
	mapLeft   = 14.0 // room for degrees of latitude
	mapRight  = 2.0
	mapTop    = 2.0
	mapBottom = 8.0 // and of longitude
	mapLow    = 60.0
	mapHigh   = 110.0
)

// What the map may hold: names as long as there are few, and dots that are apart.
const (
	mostNames = 60
	dotsApart = 0.4 // mm
)

// A chart turns places into millimetres: degrees of latitude are equally long, those of
// longitude as long as they are halfway up the map, against them.
type chart struct {
	west, north float64 // at the corner
	east, south float64
	scale       float64 // mm for a degree of latitude
	narrow      float64 // of a degree of longitude, against one of latitude
}

func (c chart) at(lat, lon float64) drawing.Point {
	return drawing.Point{X: mapLeft + c.from(lon)*c.scale*c.narrow, Y: mapTop + (c.north-lat)*c.scale}
}

// from is how many degrees a longitude is east of the western edge.
func (c chart) from(lon float64) float64 { return math.Mod(lon-c.west+720, 360) }

// plate draws the schools on a plain plate with meridians and circles of latitude.
func (d *District) plate(schools []surveyed) drawing.Drawing {
	good := slices.DeleteFunc(slices.Clone(schools), func(s surveyed) bool { return s.bad })
	c := chartOf(good)
	bottom := c.at(c.south, c.west).Y
	m := drawing.Drawing{Name: "district-map", Width: mapWidth, Height: bottom + mapBottom,
		Title: say.Line("district.map"), Description: say.Line("district.map_about", say.Count(len(good)))}
	right := mapWidth - mapRight
	m.Area("plate", drawing.Point{X: mapLeft, Y: mapTop}, drawing.Point{X: right, Y: mapTop}, drawing.Point{X: right, Y: bottom}, drawing.Point{X: mapLeft, Y: bottom})
	c.net(&m)
	d.dots(&m, c, schools)
	return m
}

// chartOf fits a chart to the schools, with a margin; where there is none, to the Earth.
func chartOf(schools []surveyed) chart {
	if len(schools) == 0 {
		schools = []surveyed{{latitude: 60, longitude: -180}, {latitude: -60, longitude: 179}}
	}
	south, north := schools[0].latitude, schools[0].latitude
	var lons []float64
	for _, s := range schools {
		south, north = min(south, s.latitude), max(north, s.latitude)
		lons = append(lons, s.longitude)
	}
	west, wide := around(lons)
	middle := (south + north) / 2
	narrow := max(0.2, math.Cos(middle*math.Pi/180))
	// The frame holds both spans, each with a margin; what one has left the other gets.
	const least = 0.5 // degrees
	high, across := max(north-south, least)*1.16, min(360, max(wide, least)*1.12)
	inside := mapWidth - mapLeft - mapRight
	scale := min(inside/(across*narrow), mapHigh/high)
	tall := min(mapHigh, max(mapLow, high*scale))
	across = min(360, inside/(scale*narrow))
	scale = inside / (across * narrow)
	high = tall / scale
	c := chart{scale: scale, narrow: narrow}
	c.north, c.south = middle+high/2, middle-high/2
	c.west = west + wide/2 - across/2
	c.east = c.west + across
	return c
}

// around finds the shortest stretch that holds all longitudes, across the date line where
// that is shorter: its western end, and how wide it is.
func around(lons []float64) (west, wide float64) {
	lons = slices.Compact(slices.Sorted(slices.Values(lons)))
	gap, after := lons[0]+360-lons[len(lons)-1], 0
	for i := 1; i < len(lons); i++ {
		if lons[i]-lons[i-1] > gap {
			gap, after = lons[i]-lons[i-1], i
		}
	}
	return lons[after], 360 - gap
}

// net draws circles of latitude and meridians, with their degrees outside the frame.
func (c chart) net(m *drawing.Drawing) {
	step := netStep(c.north-c.south, 5)
	for lat := math.Ceil(c.south/step) * step; lat <= c.north; lat += step {
		if math.Abs(lat) > 90 {
			continue
		}
		role := "grid"
		if atNought(lat) {
			role = "grid equator"
		}
		from := c.at(lat, c.west)
		m.Line(role, from, drawing.Point{X: mapWidth - mapRight, Y: from.Y})
		m.Label("figure", drawing.Point{X: mapLeft - 1.5, Y: from.Y + 1.2}, drawing.End, latitude(lat, step))
	}
	step = netStep(c.east-c.west, 7)
	for lon := math.Ceil(c.west/step) * step; lon < c.east; lon += step {
		x := mapLeft + (lon-c.west)*c.scale*c.narrow
		bottom := c.at(c.south, c.west).Y
		m.Line("grid", drawing.Point{X: x, Y: mapTop}, drawing.Point{X: x, Y: bottom})
		if x > mapLeft+3 && x < mapWidth-mapRight-3 {
			m.Label("figure", drawing.Point{X: x, Y: bottom + 4.5}, drawing.Middle, longitude(lon, step))
		}
	}
}

// netStep is the distance between two lines of the net, in degrees, with at most so many on
// a span.
func netStep(span float64, most int) float64 {
	for _, step := range []float64{0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 45} {
		if span/step <= float64(most) {
			return step
		}
	}
	return 60
}

func atNought(degrees float64) bool { return math.Abs(degrees) < 1e-6 }

func latitude(degrees, step float64) say.Value {
	return side(degrees, step, "district.north", "district.south")
}

func longitude(degrees, step float64) say.Value {
	return side(math.Mod(degrees+540+360, 360)-180, step, "district.east", "district.west")
}

// side says whole degrees, or as many decimals as the step has, with a letter for the side.
func side(degrees, step float64, positive, negative string) say.Value {
	decimals := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	plain := say.Number(math.Abs(degrees), "deg", decimals)
	switch {
	case atNought(degrees), atNought(math.Abs(degrees) - 180): // neither east nor west
		return plain
	case degrees < 0:
		return plain.As(negative, plain)
	}
	return plain.As(positive, plain)
}

// dots draws the schools: one for those that would be one on paper.
func (d *District) dots(m *drawing.Drawing, c chart, schools []surveyed) {
	radius := 1.5
	if len(schools) > mostNames {
		radius = 1.1
	}
	if len(schools) > 20*mostNames {
		radius = 0.6
	}
	clear := radius + 0.5 // of names, which have a rim of paper
	drawn := map[drawing.Point]bool{}
	named := map[string]drawing.Point{}
	for i, s := range schools {
		if s.bad {
			continue
		}
		at := c.at(s.latitude, s.longitude)
		cell := drawing.Point{X: math.Round(at.X / dotsApart), Y: math.Round(at.Y / dotsApart)}
		if drawn[cell] {
			continue
		}
		drawn[cell] = true
		m.Disc("sun", at, radius)
		m.Block(drawing.Box{Left: at.X - clear, Top: at.Y - clear, Right: at.X + clear, Bottom: at.Y + clear})
		name, _, _ := d.list.cell(&d.list.rows[i], townHead)
		if name == "" {
			name, _, _ = d.list.cell(&d.list.rows[i], school.Name.Name())
		}
		if _, there := named[name]; !there && name != "" {
			named[name] = at
		}
	}
	if len(named) > mostNames {
		return
	}
	names := make([]string, 0, len(named))
	for name := range named {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Compare(a, b) })
	for _, name := range names {
		m.Offer("name", 1, say.Text(name), drawing.Beside(named[name], radius+0.8)...)
	}
}
