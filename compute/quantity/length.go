package quantity

// A Length is a distance in metres.
type Length float64

// AstronomicalUnit is 149 597 870 700 m exactly: IAU 2012 Resolution B2.
const AstronomicalUnit Length = 149597870700

// Metres, Kilometres and Millimetres return the length of that many units.
func Metres(m float64) Length       { return Length(m) }
func Kilometres(km float64) Length  { return Length(km * 1000) }
func Millimetres(mm float64) Length { return Length(mm / 1000) }

// Metres returns the length in metres.
func (l Length) Metres() float64 { return float64(l) }

// Kilometres returns the length in kilometres.
func (l Length) Kilometres() float64 { return float64(l) / 1000 }

// Millimetres returns the length in millimetres.
func (l Length) Millimetres() float64 { return float64(l) * 1000 }
