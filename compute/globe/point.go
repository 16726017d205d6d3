package globe

import (
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A World is one whose places are known, by its name in compute/world.
type World string

// The worlds.
const (
	Moon World = "moon"
	Mars World = "mars"
)

// Radius is the mean radius of the world's sphere: IAU Working Group on Cartographic
// Coordinates and Rotational Elements 2015 (Archinal and others, Celestial Mechanics
// and Dynamical Astronomy 130, 22, 2018), tables 4 and 5.
func (w World) Radius() quantity.Length {
	if w == Mars {
		return quantity.Kilometres(3389.50)
	}
	return quantity.Kilometres(1737.4)
}

// A Point is a place on a globe.
type Point struct {
	Latitude  quantity.Angle // north positive
	Longitude quantity.Angle // east positive
}

// Vector returns the direction of the point from the middle of the globe: x to where
// the equator meets the prime meridian, z to the north pole.
func (p Point) Vector() space.Vector { return space.At(p.Longitude, p.Latitude, 1) }

// Angle returns the angle between two points as seen from the middle of the globe.
func (p Point) Angle(q Point) quantity.Angle { return p.Vector().Angle(q.Vector()) }

// Apart returns the distance of two points along the ground, by the great circle.
func (w World) Apart(p, q Point) quantity.Length {
	return quantity.Length(p.Angle(q).Radians()) * w.Radius()
}

// Toward returns the bearing in which a walk from p to q sets out, from north
// clockwise; 0 where they are one point.
func (p Point) Toward(q Point) quantity.Angle {
	dl := q.Longitude - p.Longitude
	y := dl.Sin() * q.Latitude.Cos()
	x := p.Latitude.Cos()*q.Latitude.Sin() - p.Latitude.Sin()*q.Latitude.Cos()*dl.Cos()
	return quantity.Atan2(y, x).Bearing()
}
