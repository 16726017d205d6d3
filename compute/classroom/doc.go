// Package classroom counts people and things: groups of a class, and how many
// of a thing the class needs.
//
//	groups := classroom.Groups(28, 3)        // 9 groups: one of 4, eight of 3
//	cards := classroom.Total(2, classroom.PerGroup, 1, 28, groups) // 19
//
// Counts are whole and never negative. An empty class has no groups and needs
// nothing but what the class shares.
package classroom
