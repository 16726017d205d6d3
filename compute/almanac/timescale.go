package almanac

import "time"

// j2000 is the Unix time of 2000-01-01 12:00 UTC.
const j2000 = 946728000

// reach is how far from J2000, in days, series are evaluated. Beyond it, five
// times the promised range and more, they are held, so that every time.Time
// gives finite numbers.
const reach = 10 * 36525.0

// A moment is an instant in the two scales that the equations ask for.
type moment struct {
	ut        float64 // days of UT since 2000-01-01 12:00 UT
	centuries float64 // Julian centuries of TT since J2000
}

func momentOf(t time.Time) moment {
	seconds := float64(t.Unix()-j2000) + float64(t.Nanosecond())*1e-9
	return momentAt(seconds / 86400)
}

func momentAt(ut float64) moment {
	ut = max(-reach, min(reach, ut))
	return moment{ut: ut, centuries: (ut + deltaT(ut)/86400) / 36525}
}

// timeOf returns the instant of TT given in Julian centuries since J2000.
func timeOf(centuries float64) time.Time {
	days := centuries * 36525
	ut := days - deltaT(days-deltaT(days)/86400)/86400
	return timeAt(ut)
}

// timeAt returns the instant ut days of UT after J2000, to the microsecond.
func timeAt(ut float64) time.Time {
	return time.UnixMicro(j2000*1e6 + int64(max(-reach, min(reach, ut))*86400e6)).UTC()
}

// DeltaT returns TT − UT at t, where UT is the scale of time.Time: UTC since
// 1972, which keeps within 0.9 s of the Earth's rotation, UT1 before.
//
//   - Since 1972 it is TT − UTC = 32.184 s + TAI − UTC from the table of leap
//     seconds (IERS Bulletin C): 69.184 s since 2017. No further leap second is
//     assumed to the end of the range: General Conference on Weights and
//     Measures 2022, Resolution 4, lets UTC run free from 2035 at the latest.
//   - From 1941 to 1972 the polynomials of Espenak & Meeus, Five Millennium
//     Canon of Solar Eclipses, NASA/TP-2006-214141, section 2.7; good to 0.3 s.
//   - Before 1941 the parabola −20 + 32 u² s, u centuries from 1820 (same
//     source): rough, for instants outside the range of this package.
//
// What the Earth's rotation does in coming decades nobody knows: clock times
// after about 2035 carry an error of seconds, by 2100 perhaps of a minute,
// that no almanac can avoid.
func DeltaT(t time.Time) time.Duration {
	return time.Duration(deltaT(momentOf(t).ut) * float64(time.Second)).Round(time.Microsecond)
}

// deltaT returns TT − UT in seconds, ut in days from J2000.
func deltaT(ut float64) float64 {
	if ut >= leaps[0].ut {
		i := len(leaps) - 1
		for leaps[i].ut > ut {
			i--
		}
		return 32.184 + leaps[i].tai
	}
	year := 2000 + (ut+0.5)/365.25
	switch {
	case year < 1941:
		u := (year - 1820) / 100
		return -20 + 32*u*u
	case year < 1961:
		u := year - 1950
		return 29.07 + 0.407*u - u*u/233 + u*u*u/2547
	default:
		u := year - 1975
		return 45.45 + 1.067*u - u*u/260 - u*u*u/718
	}
}

// leaps is TAI − UTC in seconds from the given day of UTC on, days from J2000
// (noon): IERS Bulletin C, as in the leap-seconds.list file of the IANA.
var leaps = [...]struct{ ut, tai float64 }{
	{-10227.5, 10}, // 1972-01-01
	{-10045.5, 11}, // 1972-07-01
	{-9861.5, 12},  // 1973-01-01
	{-9496.5, 13},  // 1974-01-01
	{-9131.5, 14},  // 1975-01-01
	{-8766.5, 15},  // 1976-01-01
	{-8400.5, 16},  // 1977-01-01
	{-8035.5, 17},  // 1978-01-01
	{-7670.5, 18},  // 1979-01-01
	{-7305.5, 19},  // 1980-01-01
	{-6758.5, 20},  // 1981-07-01
	{-6393.5, 21},  // 1982-07-01
	{-6028.5, 22},  // 1983-07-01
	{-5297.5, 23},  // 1985-07-01
	{-4383.5, 24},  // 1988-01-01
	{-3652.5, 25},  // 1990-01-01
	{-3287.5, 26},  // 1991-01-01
	{-2740.5, 27},  // 1992-07-01
	{-2375.5, 28},  // 1993-07-01
	{-2010.5, 29},  // 1994-07-01
	{-1461.5, 30},  // 1996-01-01
	{-914.5, 31},   // 1997-07-01
	{-365.5, 32},   // 1999-01-01
	{2191.5, 33},   // 2006-01-01
	{3287.5, 34},   // 2009-01-01
	{4564.5, 35},   // 2012-07-01
	{5659.5, 36},   // 2015-07-01
	{6209.5, 37},   // 2017-01-01
}
