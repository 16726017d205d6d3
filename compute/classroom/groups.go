package classroom

import "math"

// Groups splits pupils into groups of about size and returns the size of each,
// largest first. The sizes differ by at most one, since a pupil left over alone
// would have no group to work in.
func Groups(pupils, size int) []int {
	if pupils <= 0 || size <= 0 {
		return nil
	}
	n := max(1, int(math.Round(float64(pupils)/float64(size))))
	groups := make([]int, n)
	for i := range groups {
		groups[i] = pupils / n
		if i < pupils%n {
			groups[i]++
		}
	}
	return groups
}

// A Share says for whom a count of things is meant.
type Share int

const (
	PerClass Share = iota
	PerGroup
	PerPupil
)

// among returns how many the share has in a class.
func (s Share) among(pupils int, groups []int) int {
	switch s {
	case PerGroup:
		return len(groups)
	case PerPupil:
		return pupils
	}
	return 1
}

// Total returns how many of a thing the whole class needs: count for each that
// shares it, and spare ones. Parts of a thing are rounded up.
func Total(count float64, share Share, spare, pupils int, groups []int) int {
	return total(count, share.among(pupils, groups), spare)
}

// total is Total for a number of those that have a count each.
func total(count float64, n, spare int) int {
	if n == 0 {
		return 0
	}
	return int(math.Ceil(count*float64(n)-1e-9)) + spare
}

// over is n over by, rounded up.
func over(n, by int) int { return (n + by - 1) / by }
