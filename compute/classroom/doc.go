// Package classroom counts people, things and days: groups of a class, how many
// of a thing the class needs, and when the lessons of a unit are held.
//
//	groups := classroom.Groups(28, 3)        // 9 groups: one of 4, eight of 3
//	cards := classroom.Total(2, classroom.PerGroup, 1, 28, groups) // 19
//	calendar := classroom.Arrange(lessons, term, classroom.Over(school))
//	calendar.Held[0].Slot                    // of the first lesson
//
// Counts are whole and never negative. An empty class has no groups and needs
// nothing but what the class shares.
//
// # How lessons find their days
//
// The lessons of a unit keep their order. Each takes the earliest lesson time
// at which everything holds that it asks for: its date or start, where it wants
// one; the Sun or the Moon high enough, darkness, hourly marks through a day;
// no more lessons a day than the term allows; days between it and an earlier
// lesson; no clock change between the two; a lesson time kept free behind it in
// case of rain.
//
// Every one of these either concerns one lesson alone or is of the form "lesson
// a is not before f(lesson b)" with an f that never falls when b moves later. If
// two calendars hold all of them, so does the calendar that takes the earlier
// time of each lesson. (Constraints that are closed under the minimum: P. Jeavons
// and M. Cooper, Tractable constraints on ordered domains, 1995, from memory.)
// So lessons need only climb: begin with everything at its earliest, move up
// whatever breaks a rule, until nothing does. What comes out is the earliest
// calendar lesson by lesson; a lesson that climbs out of the term proves that
// there is none. There is no guessing and no going back, and the number of steps
// is at most lessons times lesson times.
//
// Where there is none, Arrange finds a smallest set of needs that can be dropped
// so that a calendar exists: it takes a set of needs that cannot be met together
// and of which each is necessary for that, drops one of them, and goes on, fewest
// drops first (R. Reiter, A theory of diagnosis from first principles, 1987, from
// memory). The search is bounded; past the bound the set is one from which no
// need can be taken back, and Calendar.Smallest is false. The order of the lessons is
// no such need: it gives way only where dates that are fixed by hand leave no room
// for it, whatever else is dropped. Where even without needs there is no room, the
// most lessons that fit are kept.
//
// Times of day are those of the school's clock. A lesson with a date and a start
// of its own is held then, whatever else holds, and lessons without a date keep
// clear of it.
//
// Days need not be alike: a weekday, a day of a cycle and a half day can have lesson
// times of their own. They concern each lesson alone. A lesson that is longer than a
// lesson time takes those behind it too, with no more than a break between them, on
// the day in reserve for it as well.
//
// # An evening under the sky
//
// A lesson that is an Evening has a night of its own, beside the others, which neither wait
// for it nor make room. It begins after sunset, at 18:00 at the earliest, at the first
// quarter of an hour from which the Sun is 9° below the horizon halfway through the star
// figures and 12° halfway through the counting of stars, and ends by the hour of the
// Outing. Of the school days that have this the best is taken: with the Moon 15 % to 85 %
// lit and 10° high, then with a planet brighter than magnitude 1.5 and 10° high, then the one
// nearest to a half Moon, with both high, before a day without school. The best of the later
// ones is in reserve. All limits: common practice, no source.
//
// It does not know the weather: a lesson that needs it is given a reserve, a
// later lesson time or an indoor lesson to change places with.
package classroom
