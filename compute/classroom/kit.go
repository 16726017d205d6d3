package classroom

import "math"

// A Thing is one line of a lesson's kit.
type Thing struct {
	Item   string
	Count  float64 // for each that shares it
	Share  Share
	Shared int    // how many groups or pupils have that count together; 0 and 1 are the same
	Spare  int    // more for the whole class
	Source Source // where it comes from
	UsedUp bool   // it is gone after the lesson; other things serve again
	Price  float64
	Pack   int    // how many are sold together at the price; 0 and 1 are the same
	Print  string // the paper of the lesson that it is printed from; "" for none
}

// A Source says where a thing comes from.
type Source int

const (
	AtSchool Source = iota // the school has it
	ToBuy
	FromHome // pupils bring it
)

// Need returns how many of the thing a class needs for one lesson. Those who are left
// over when others have joined to share one have one of their own.
func (t Thing) Need(pupils int, groups []int) int {
	return total(t.Count, over(t.Share.among(pupils, groups), max(1, t.Shared)), t.Spare)
}

// A Line is one thing of the whole unit's list.
type Line struct {
	Item    string
	Source  Source
	Need    int   // over the unit: used up in every lesson, or there once
	Lessons []int // numbers of the lessons that need it, from 1
	Packs   int   // to buy; 0 where no price is known
	Cost    float64
}

// List gathers the kit of the lessons, a line for each thing and source in the
// order in which they are first needed. What is used up adds up; of what serves
// again the most that one lesson needs is enough.
func List(lessons []Lesson, pupils int, groups []int) []Line {
	type key struct {
		item   string
		source Source
	}
	type sum struct{ used, again, pack int }
	var lines []Line
	at := map[key]int{}
	sums := map[key]sum{}
	price := map[key]float64{}
	for n, l := range lessons {
		for _, t := range l.Kit {
			k := key{t.Item, t.Source}
			if _, known := at[k]; !known {
				at[k] = len(lines)
				lines = append(lines, Line{Item: t.Item, Source: t.Source})
			}
			s := sums[k]
			if need := t.Need(pupils, groups); t.UsedUp {
				s.used += need
			} else {
				s.again = max(s.again, need)
			}
			if t.Price > price[k] { // two prices for one thing: the dearer one
				price[k], s.pack = t.Price, max(1, t.Pack)
			}
			sums[k] = s
			line := &lines[at[k]]
			if last := len(line.Lessons); last == 0 || line.Lessons[last-1] != n+1 {
				line.Lessons = append(line.Lessons, n+1)
			}
		}
	}
	for k, i := range at {
		s := sums[k]
		lines[i].Need = s.used + s.again
		if price[k] > 0 {
			lines[i].Packs = int(math.Ceil(float64(lines[i].Need) / float64(s.pack)))
			lines[i].Cost = float64(lines[i].Packs) * price[k]
		}
	}
	return lines
}
